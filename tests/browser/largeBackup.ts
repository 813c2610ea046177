import { writeFileSync } from 'node:fs';

/** Writes a backup of that many droppers to a file. */
export function writeLargeBackup(path: string, many: number): void {
  const made = '2026-05-04T10:00:00.000Z';
  const records = Array.from({ length: many }, (_, i) => ({
    id: `01a20000-0000-7000-8000-${String(i).padStart(12, '0')}`,
    kind: 'dropper',
    v: 1,
    made,
    from: [],
    name: `Dropper ${i}`,
    tip: 'glass, 1 mm',
  }));
  writeFileSync(path, JSON.stringify({ format: 'minim-backup', version: 1, made, records, events: [] }));
}
