import { appendFileSync } from 'node:fs';
import { relative } from 'node:path';
import { expect } from 'vitest';

/** The file that `npm run bench -- residuals` reads: a line of JSON for each table. */
const collected = process.env['RESIDUALS'];

/** A line of the table of residuals: the test that made it, how many values, the largest difference and which, and their mean size. */
export interface TableOfResiduals {
  readonly place: string;
  readonly table: string;
  readonly values: number;
  readonly largest: number;
  readonly at: string;
  readonly mean: number;
}

/** Collects differences from a published table and prints one line: how many, the largest, the mean size. */
export function residuals(table: string) {
  const seen: { id: string; difference: number }[] = [];
  return {
    add(id: string, difference: number) {
      seen.push({ id, difference });
    },
    print() {
      const size = seen.map(({ difference }) => Math.abs(difference));
      const largest = Math.max(...size);
      const at = seen[size.indexOf(largest)]?.id ?? '';
      const mean = size.reduce((sum, one) => sum + one, 0) / size.length;
      const place = relative('.', expect.getState().testPath ?? '');
      const line: TableOfResiduals = { place, table, values: seen.length, largest, at, mean };
      if (collected) appendFileSync(collected, `${JSON.stringify(line)}\n`);
      else
        console.info(
          `${table}: ${seen.length} values, largest ${largest.toPrecision(2)} (${at}), mean ${mean.toPrecision(2)}`,
        );
    },
  };
}

/** The same for differences that are at hand all at once; each goes by its row, from 1. */
export function tellResiduals(table: string, differences: readonly number[]): void {
  const seen = residuals(table);
  differences.forEach((difference, i) => seen.add(`row ${i + 1}`, difference));
  seen.print();
}
