import { useSignal } from '@preact/signals';
import type { Bottle } from '../../records/kind/material';
import { find, list, shelf } from '../../records/shelf';
import { formatCount } from '../../ui/format';
import { ShelfEntry } from '../describe/ShelfEntry';
import { go } from '../nav/route';
import { ThingList } from './ThingList';

const PAGE = 60; // materials drawn at first, and more with each tap

/** Bottles, newest first; several lots of one material are together under its name, which opens the material. */
export function BottleList() {
  const shown = useSignal(PAGE);
  const groups = groupsOf(list('bottle'));
  const bare = list('material').filter(({ id }) => !groups.has(id));
  return (
    <>
      {[...groups].slice(0, shown.value).map(([material, bottles]) => (
        <Group key={material} material={material} bottles={bottles} />
      ))}
      {groups.size > shown.value && (
        <button class="second all" onClick={() => (shown.value += PAGE)}>
          Show more ({formatCount(groups.size - shown.value)})
        </button>
      )}
      {bare.length > 0 && (
        <section>
          <h2>Without a bottle</h2>
          <ThingList records={bare} of={shelf.records.value} />
        </section>
      )}
    </>
  );
}

function groupsOf(bottles: readonly Bottle[]): Map<string, Bottle[]> {
  const groups = new Map<string, Bottle[]>();
  for (const bottle of bottles) {
    if (!groups.has(bottle.material)) groups.set(bottle.material, []);
    groups.get(bottle.material)!.push(bottle);
  }
  return groups;
}

function Group({ material, bottles }: { material: string; bottles: readonly Bottle[] }) {
  return (
    <section class={bottles.length > 1 ? 'lots-of' : undefined}>
      {bottles.length > 1 && (
        <h2>
          <button onClick={() => go(['record', material])}>
            {find('material', material)?.name ?? 'A material that is gone'}, {bottles.length} bottles
          </button>
        </h2>
      )}
      <ul class="list">
        {bottles.map((record) => (
          <ShelfEntry key={record.id} record={record} />
        ))}
      </ul>
    </section>
  );
}
