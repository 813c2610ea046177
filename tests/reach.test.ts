import { mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve, sep } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { Reach } from './reach';

/**
 * What the app does not reach yet, by file: kept for the issue that brings it to the screen. What these alone need needs no
 * entry. Kept too, but within code that is reached, so that no walk by names can see it: the caps of a drop plan by mass and
 * by solvent (issue 16: the size of the trial's vial, the alcohol-free line).
 */
const kept: Readonly<Record<string, readonly string[]>> = {
  'core/drink/emulsion.ts': ['highestDosage', 'hlbShare', 'oilMatched', 'requiredHlb'], // issue 18: emulsion
  'core/liquid/ethanol.ts': ['ethanolFromDensity', 'mixSpirits', 'waterToReduce'], // issue 18: measuring a batch
  'core/liquid/sucrose.ts': ['sucroseFromDensity'], // issue 18: measuring a batch
  'core/sensory/bradleyTerry.ts': ['bradleyTerry'], // issue 20: proportions
  'tables/useLevels.ts': ['exampleLevels'], // issue 15: limits panel
};

const root = resolve(import.meta.dirname, '..');
const reach = new Reach(root, ['src/main.tsx', 'vite.config.ts', 'src/records/journal/journalWorker.ts']);
const files = ['core', 'tables', 'workshop'].flatMap((floor) =>
  readdirSync(resolve(root, 'src', floor), { recursive: true, encoding: 'utf8' })
    .filter((file) => /\.tsx?$/.test(file))
    .map((file) => `${floor}/${file.split(sep).join('/')}`),
);
const keptNames = Object.entries(kept).flatMap(([file, names]) => names.map((name) => `${file}: ${name}`));
const unreached = () => files.flatMap((file) => reach.unreached(`src/${file}`).map((name) => `${file}: ${name}`));

test('the app reaches every export of core, tables and workshop, but for a short list', () => {
  const still = unreached();
  expect(keptNames.filter((name) => !still.includes(name))).toEqual([]); // gone, or reached now: off the list with it
  for (const [file, names] of Object.entries(kept)) reach.from(`src/${file}`, names);
  expect(unreached()).toEqual([]);
});

describe('the walk', () => {
  const folder = mkdtempSync(join(tmpdir(), 'reach-'));
  const write = (file: string, text: string) => writeFileSync(join(folder, file), text);
  afterAll(() => rmSync(folder, { recursive: true }));

  test('follows names, types, later imports and names exported again; not properties, keys, hidden or unused names', () => {
    write('main.ts', `import { used, unused } from './a'; used({ key: 1 }.key); (await import('./b')).late();`);
    write(
      'a.ts',
      `import type { Shape } from './c'; export { passed } from './c';
      export function used(hidden: Shape) { const inner = hidden; return near() + inner.property; }
      function near() { return 1; }
      export const unused = 1, hidden = 2, inner = 3, property = 4, key = 5, label = 6;`,
    );
    write(
      'b.tsx',
      `import { passed } from './a'; export const late = () => <label>{passed}</label>; export const idle = 1;`,
    );
    write(
      'c.ts',
      `export interface Shape extends Base { label: string } interface Base { x: Far } export type Far = 1;
      export type Idle = Shape; export const passed = 1;`,
    );
    const walk = new Reach(folder, ['main.ts']);
    expect(walk.unreached('a.ts')).toEqual(['unused', 'hidden', 'inner', 'property', 'key', 'label']);
    expect(walk.unreached('b.tsx')).toEqual(['idle']);
    expect(walk.unreached('c.ts')).toEqual(['Idle']);
    walk.from('c.ts', ['Idle']);
    expect(walk.unreached('c.ts')).toEqual([]);
  });
});
