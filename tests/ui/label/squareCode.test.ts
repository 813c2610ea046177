import { describe, expect, test } from 'vitest';
import { codeTextOf, shortIdOf } from '../../../src/records/kind/shortId';
import { darkRuns, squareCodeOf } from '../../../src/ui/label/squareCode';
import { blurred, codesIn, noisy, picture, turned, type Picture } from '../../pictures';

const text = codeTextOf(shortIdOf('a vial'));

/** As a printer puts it down: that many dots to a module, four modules of white around. */
function printed(dots: number): Picture {
  const code = squareCodeOf(text);
  const side = (code.side + 8) * dots;
  return picture(side, side, (x, y) => (code.dark(Math.floor(x / dots) - 4, Math.floor(y / dots) - 4) ? 0 : 255));
}

describe('the code of a label', () => {
  test('is the smallest there is, 21 modules (version 1), for a short id', () => {
    expect(squareCodeOf(text).side).toBe(21);
  });

  test('corrects up to 30 % (level H): its format bits say so', () => {
    const { dark } = squareCodeOf(text);
    const bits = [dark(0, 8), dark(1, 8)].map((module, i) => module !== [true, false][i]); // mask 101… of ISO/IEC 18004
    expect(bits).toEqual([true, false]); // 10 is level H
  });

  test('is drawn whole by its runs of dark modules', () => {
    const code = squareCodeOf(text);
    const drawn = new Set(
      darkRuns(code).flatMap(({ x, y, length }) => Array.from({ length }, (_, i) => `${x + i} ${y}`)),
    );
    for (let y = 0; y < code.side; y++)
      for (let x = 0; x < code.side; x++) expect(drawn.has(`${x} ${y}`)).toBe(code.dark(x, y));
  });

  test.each([3, 4, 6])('is read back by the app’s own decoder at %i dots to a module', async (dots) => {
    expect(await codesIn(printed(dots))).toEqual([text]);
  });

  test('is read back turned by any angle, blurred and noisy', async () => {
    for (const degrees of [0, 17, 45, 133, 270])
      expect(await codesIn(noisy(blurred(turned(printed(3), degrees, 3), 3), 25))).toEqual([text]); // a third of a module, a tenth of white
  });

  test('with a drop of ink on it it is still read; with a finder covered it is not', async () => {
    const clean = printed(4);
    const covered = (x0: number, y0: number, size: number) =>
      picture(clean.width, clean.height, (x, y) =>
        x >= x0 && x < x0 + size && y >= y0 && y < y0 + size ? 255 : clean.grey[y * clean.width + x]!,
      );
    expect(await codesIn(covered(4 * 4 + 14 * 4, 4 * 4 + 13 * 4, 4 * 4))).toEqual([text]);
    expect(await codesIn(covered(4 * 4, 4 * 4, 8 * 4))).toEqual([]);
  });
});
