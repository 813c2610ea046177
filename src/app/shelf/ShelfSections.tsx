import { kindNames, kinds, type AnyRecord, type KindName } from '../../records/kind/kinds';
import type { Kind } from '../../records/kind/record';
import { list } from '../../records/shelf';
import { go } from '../nav/route';
import { ShelfEntry } from '../describe/ShelfEntry';
import { PageHead } from '../nav/PageHead';

/** The kinds that the Shelf shows, in this order. */
export const sections = kindNames.filter((kind) => kinds[kind].shelf !== null);

const FEW = 6; // shown of a section until all are asked for

/** Records of a kind as the Shelf shows them. */
function shownOf(kind: KindName): readonly AnyRecord[] {
  const { shelf }: Kind<AnyRecord> = kinds[kind];
  return shelf?.(list(kind)) ?? [];
}

/** The first few of a kind. */
export function Section({ kind }: { kind: KindName }) {
  const records = shownOf(kind);
  if (records.length === 0) return null;
  return (
    <section>
      <h2>{kinds[kind].words.many}</h2>
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
export function OneKind({ kind }: { kind: KindName }) {
  return (
    <main class="page shelf">
      <PageHead title={kinds[kind].words.many} />
      <ul class="list">
        {shownOf(kind).map((record) => (
          <ShelfEntry key={record.id} record={record} />
        ))}
      </ul>
    </main>
  );
}
