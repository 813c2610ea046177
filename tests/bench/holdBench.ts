import { readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { vitest } from './vitestRun';

const MUTANTS = 5000;
const IN_BROWSER = 200;

/**
 * Backups with something wrong in them, restored, and everything that is left of each drawn; then some of them in a real browser, of
 * the app as it was built last. After the name: how many, how many of them in the browser, and the seed.
 */
export async function holdBench(count = String(MUTANTS), inBrowser = String(IN_BROWSER), seed = '21'): Promise<void> {
  const file = join(tmpdir(), `minim-hold-${process.pid}.json`);
  const env = { MUTANTS: count, SEED: seed, MUTANTS_TOLD: file };
  const drawn = vitest('long', 'tests/app/fault/mutants.long.test.ts', env);
  const { wrong = [], ...held } = JSON.parse(readFileSync(file, 'utf8')) as { wrong?: string[] };
  rmSync(file);
  console.log(JSON.stringify({ bench: 'hold', ...held, exceptions: wrong.length, wrong, passed: drawn }));
  if (Number(inBrowser) === 0) return;
  const passed = vitest('browser', 'tests/browser/mutants.test.ts', { MUTANTS: inBrowser });
  console.log(JSON.stringify({ bench: 'hold in a browser', tried: Number(inBrowser), passed }));
}
