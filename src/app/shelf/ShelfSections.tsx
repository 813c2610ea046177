import type { AnyRecord } from '../../records/kind/kinds';
import { list } from '../../records/shelf';
import { go } from '../nav/route';
import { ShelfEntry } from '../describe/ShelfEntry';

/** What the Shelf shows, in this order. */
export const sections = [
  ['vial', 'Vials'],
  ['bottle', 'Bottles'],
  ['supply', 'Solvents, strips, glass'],
  ['dropper', 'Droppers'],
  ['calibration', 'Calibrations'],
  ['formula', 'Formulas'],
  ['layering', 'Layerings'],
  ['tasting', 'Drinks'],
  ['batch', 'Batches'],
  ['test', 'Blind tests'],
  ['solvent', 'Own solvents'],
  ['material', 'Materials'],
] as const;

const FEW = 6; // shown of a section until all are asked for

/** Records of a kind as the Shelf shows them: of a formula its newest version, whose page has the others. */
function shownOf(kind: (typeof sections)[number][0]): AnyRecord[] {
  const records: AnyRecord[] = list(kind);
  if (kind !== 'formula') return records;
  const formulas = list('formula');
  return formulas.filter((one) => formulas.every((other) => other.root !== one.root || other.version <= one.version));
}

/** The first few of a kind. */
export function Section({ kind, words }: { kind: (typeof sections)[number][0]; words: string }) {
  const records = shownOf(kind);
  if (records.length === 0) return null;
  return (
    <section>
      <h2>{words}</h2>
      <ul class="list">
        {records.slice(0, FEW).map((record) => (
          <ShelfEntry key={record.id} record={record} />
        ))}
      </ul>
      {records.length > FEW && (
        <button class="second all" onClick={() => go(['shelf', kind])}>
          All {records.length}
        </button>
      )}
    </section>
  );
}

/** All of a kind: #/shelf/<kind>. */
export function OneKind({ kind, words }: { kind: (typeof sections)[number][0]; words: string }) {
  return (
    <main class="page shelf">
      <header class="top">
        <h1>{words}</h1>
        <button class="round" onClick={() => history.back()} aria-label="Back">
          ✕
        </button>
      </header>
      <ul class="list">
        {shownOf(kind).map((record) => (
          <ShelfEntry key={record.id} record={record} />
        ))}
      </ul>
    </main>
  );
}
