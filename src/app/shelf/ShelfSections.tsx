import { signal } from '@preact/signals';
import { kindNames, kinds, type AnyRecord, type KindName } from '../../records/kind/kinds';
import type { Kind } from '../../records/kind/record';
import { list, shelf } from '../../records/shelf';
import { formatCount } from '../../ui/format';
import { go } from '../nav/route';
import { BottleList } from './BottleList';
import { place } from './place';
import { ThingList } from './ThingList';

/** The kinds that the Shelf shows, in this order. */
const sections = kindNames.filter((kind) => kinds[kind].shelf !== null);

/** The one that was looked at last. */
const last = signal<KindName | null>(null);

/** Records of a kind as the Shelf shows them. */
function shownOf(kind: KindName): readonly AnyRecord[] {
  const { shelf }: Kind<AnyRecord> = kinds[kind];
  return shelf?.(list(kind)) ?? [];
}

/** What one owns, a kind at a time: #/shelf/<kind>; without one the kind that was looked at last, or the first there is. */
export function Sections() {
  const all = sections.map((kind) => ({ kind, records: shownOf(kind) })).filter(({ records }) => records.length > 0);
  const wanted = place.value[0] ?? last.value;
  const shown = all.find(({ kind }) => kind === wanted) ?? all[0];
  if (!shown) return null;
  return (
    <>
      <div class="kinds" role="group" aria-label="What to show">
        {all.map(({ kind, records }) => (
          <button
            class="pick"
            aria-pressed={kind === shown.kind}
            onClick={() => {
              last.value = kind;
              go(['shelf', kind], 'replace');
            }}
          >
            {kinds[kind].words.many} <span class="how-many">{formatCount(records.length)}</span>
          </button>
        ))}
      </div>
      {shown.kind === 'bottle' ? (
        <BottleList key="bottle" />
      ) : (
        <ThingList key={shown.kind} records={shown.records} of={shelf.records.value} />
      )}
    </>
  );
}
