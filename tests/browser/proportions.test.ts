import { afterAll, beforeAll, expect, onTestFailed, test } from 'vitest';
import { vialRecord } from './benchRecords';
import { hand } from './hand';
import { openBench, type OpenBench } from './openBench';
import type { Phone } from './phone';

let bench: OpenBench;
let phone: Phone;
const CODES = ['CARD', 'HEX', 'PGF'];

beforeAll(async () => {
  bench = await openBench({
    width: 360,
    height: 740,
    records: [...CODES, 'LIMO'].map((code) => vialRecord({ code, name: `material ${code}` })),
  });
  ({ phone } = bench);
});

afterAll(() => bench.close());

const BUDGET = 24; // touches from the verdict on the fan to the formula, with eleven blends judged and a session's rest

const likings = [6, 4, 7, 3, 5, 8, 6, 2, 7, 5, 6];

test(`from the fan to a formula in at most ${BUDGET} touches and no key, over a reload`, async () => {
  const { page } = phone;
  const h = hand(page);
  onTestFailed(async () => void (await page.screenshot({ path: 'tests/output/proportions.png' })));
  await h.task('Layer strips');
  for (const code of CODES) await h.pick(code);
  await page.locator('.main', { hasText: 'Dip 3' }).tap();
  for (const code of CODES) {
    await page.locator('.dip-pad', { hasText: code }).waitFor();
    await page.waitForTimeout(450);
    await page.locator('.dip-pad').tap();
  }
  await page.locator('.main', { hasText: 'Give a verdict' }).tap();

  let touches = 0;
  const touch = async (locator: ReturnType<typeof page.locator>) => {
    touches++;
    await locator.tap();
  };
  touches++;
  await h.choose('Keep');
  await touch(page.getByRole('button', { name: 'Find the proportions' }));
  await page.locator('.card-answer', { hasText: '11 blends' }).waitFor();
  for (const code of CODES) expect(await page.locator('.sentence').textContent()).toContain(`${code} 1 %`);
  await touch(page.locator('.main', { hasText: 'Make the first blend' }));

  for (const [n, liking] of likings.entries()) {
    if (n === 6) {
      await h.sees('enough for this session');
      await page.waitForURL(/rest\.6$/); // the address follows a moment later
      await page.reload(); // another day: every liking is there
      await h.sees('enough for this session');
      await touch(page.locator('.main', { hasText: 'Continue' }));
    }
    await page.locator('.quiet', { hasText: `Blend ${n + 1} of 11` }).waitFor();
    await touch(page.getByRole('button', { name: new RegExp(`^${liking}, `) }));
  }
  await h.sees('Best so far');
  const map = page.locator('.blend-map');
  expect(await map.locator('.mark.tried').count()).toBeGreaterThanOrEqual(10); // and one in the legend
  expect(await map.locator('svg[role=img]').getAttribute('aria-label')).toMatch(/expected \d.*judged \d/);
  const box = (await map.locator('svg[role=img]').boundingBox())!;
  await page.touchscreen.tap(box.x + box.width / 2, box.y + 0.1 * box.height); // the corner of the first
  await map.locator('.told', { hasText: /^6\sCARD\s1\s%: expected/ }).waitFor();

  await touch(page.locator('.main', { hasText: 'Next:' }));
  await page.locator('.quiet', { hasText: 'Blend 12, proposed' }).or(page.locator('.say', { hasText: 'enough for' })).first().waitFor(); // prettier-ignore
  if (await page.locator('.main', { hasText: 'Continue' }).count()) await touch(page.locator('.main', { hasText: 'Continue' })); // prettier-ignore
  await touch(page.getByRole('button', { name: /^8, / }));
  await touch(page.getByRole('button', { name: 'Stop and save' }));
  await page.locator('.record .blend-map').waitFor();
  await touch(page.getByRole('button', { name: 'Take it to a formula' }));
  await h.sees('Parts by mass');
  await touch(page.locator('.main'));
  await h.sees('What is it called');
  await touch(page.locator('.main', { hasText: 'Save' }));
  await page.locator('.record .own', { hasText: /liking expected \d.* ± / }).waitFor();
  console.info(`from the verdict on the fan to the formula: ${touches} touches, 12 blends`);
  expect(touches).toBeLessThanOrEqual(BUDGET);
});

test('the layering says how far it was taken, and the blend goes on to a vial and a blind test', async () => {
  const { page } = phone;
  onTestFailed(async () => void (await page.screenshot({ path: 'tests/output/proportions-on.png' })));
  await page.goto(`${bench.url}#/book`);
  await page.locator('.page-of-book', { hasText: 'keep' }).getByRole('button', { name: 'Open' }).tap();
  await page.locator('.thing-words', { hasText: /12 blends, best \d/ }).waitFor();
  await page.locator('.entry', { hasText: 'Proportions' }).tap();
  await page.getByRole('button', { name: 'Test it blind' }).tap();
  await page.locator('.sentence', { hasText: /CARD|HEX|PGF/ }).waitFor();
  await page.goBack();
  await page.getByRole('button', { name: 'Count it into a vial' }).tap();
  await page.locator('.task-card').waitFor();
  expect(await page.locator('.task-card').textContent()).toMatch(/1 %/);
});

test('four vials, blind, at 320 px in the dark: codes alone while smelling, then slices that each tell their own blends', async () => {
  const { page } = phone;
  const h = hand(page);
  onTestFailed(async () => void (await page.screenshot({ path: 'tests/output/proportions-four.png' })));
  await page.setViewportSize({ width: 320, height: 640 });
  await page.emulateMedia({ colorScheme: 'dark' });
  await page.goto(`${bench.url}#/new/proportions`);
  for (const [i, code] of [...CODES, 'LIMO'].entries()) await h.slot(`vial.${i}`, code);
  await h.slot('blind', 'Blind codes');
  await page.locator('.card-answer', { hasText: '16 blends' }).waitFor();
  await page.locator('.main', { hasText: 'Make the first blends' }).tap();
  for (let n = 0; n < 16; n++) {
    if (n % 6 === 0) {
      if (n > 0) await page.locator('.main', { hasText: 'Continue' }).tap();
      await h.sees('Make these');
      const codes = await page.locator('.code-list .code').allTextContents();
      expect(codes).toEqual(codes.toSorted()); // the order of smelling is another one
      await page.locator('.main', { hasText: 'All made' }).tap();
    }
    await page.locator('.quiet', { hasText: `Blend ${n + 1} of 16` }).waitFor();
    expect(await page.locator('.run .say').textContent()).toMatch(/^Smell \d{3}\.$/);
    expect(await page.locator('.run .main').count()).toBe(0);
    await page.getByRole('button', { name: new RegExp(`^${likings[n % likings.length]}, `) }).tap();
  }
  await h.sees('Best so far');
  const faces = page.locator('.blend-map .slices svg[role=img]');
  const told = await faces.evaluateAll((all) => all.map((face) => face.getAttribute('aria-label') ?? ''));
  expect(told.map((words) => /^\d+ %/.exec(words)?.[0])).toEqual(['0 %', '25 %', '50 %', '75 %']);
  expect(told.every((words) => /expected from \d/.test(words))).toBe(true);
  expect(told.join().match(/judged/g)).toHaveLength(15); // each in one slice
  await faces.nth(1).scrollIntoViewIfNeeded();
  const box = (await faces.nth(1).boundingBox())!;
  await page.touchscreen.tap(box.x + box.width / 2, box.y + box.height * 0.6);
  await page.locator('.blend-map .told', { hasText: /^2\s\w+\s1\s% \+ 2\s.*judged \d/ }).waitFor();
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(320);
});
