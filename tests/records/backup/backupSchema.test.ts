import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { expect, test } from 'vitest';
import { backupSchema } from '../../../src/records/backup/backupSchema';
import { kinds } from '../../../src/records/kind/kinds';
import { versionOf, type Shape } from '../../../src/records/kind/record';

interface Definition {
  readonly required?: readonly string[];
  readonly properties: Readonly<Record<string, { const?: unknown }>>;
}
const { $defs } = backupSchema() as { $defs: Record<string, Definition> };
const backup = JSON.parse(readFileSync(resolve(import.meta.dirname, '../../fixtures/backups/v1.json'), 'utf8')) as {
  records: readonly { readonly kind: string }[];
};

test('the published schema of a backup describes every kind at the version that is written', () => {
  const written = Object.values(kinds).map((kind: Shape) => [kind.kind, versionOf(kind)]);
  expect(written.map(([name]) => [name, $defs[name!]!.properties['v']!.const])).toEqual(written);
});

test('it asks of a record of the first version nothing that was not in it, and knows all that was', () => {
  for (const record of backup.records) {
    const { required = [], properties } = $defs[record.kind]!;
    expect(required.filter((name) => !(name in record))).toEqual([]);
    expect(Object.keys(record).filter((name) => !(name in properties))).toEqual([]);
  }
});
