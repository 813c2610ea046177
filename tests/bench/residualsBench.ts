import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import type { TableOfResiduals } from '../core/residuals';

/** One table of how far each published table is from ours; the tests that collect the differences judge them. */
export async function residualsBench(): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), 'minim-residuals-'));
  const file = join(folder, 'lines');
  try {
    const vitest = [resolve('node_modules/vitest/vitest.mjs'), 'run', '--project', 'unit', '--reporter', 'dot'];
    const env = { ...process.env, RESIDUALS: file };
    const { status } = spawnSync(process.execPath, [...vitest, ...testsThatCollect()], { env, stdio: 'ignore' });
    const lines = existsSync(file) ? readFileSync(file, 'utf8').trim().split('\n') : [];
    const rows = lines.map((line) => JSON.parse(line) as TableOfResiduals);
    const two = (size: number) => Number(size.toPrecision(2));
    const byPlace = rows.sort((a, b) => (a.place < b.place ? -1 : 1));
    console.table(byPlace.map((row) => ({ ...row, largest: two(row.largest), mean: two(row.mean) })));
    const values = rows.reduce((sum, row) => sum + row.values, 0);
    console.log(JSON.stringify({ summary: 'residuals', tables: rows.length, values, testsPass: status === 0 }));
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

function testsThatCollect(): string[] {
  const names = readdirSync('tests', { recursive: true, encoding: 'utf8' }).map((name) => join('tests', name));
  return names.filter(
    (name) => /(?<!\.long)\.test\.ts$/.test(name) && readFileSync(name, 'utf8').includes("/residuals'"),
  );
}
