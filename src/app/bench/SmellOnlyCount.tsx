import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { list, shelf } from '../../records/shelf';
import { Part } from '../fault/Part';

type Grade = typeof import('../../workshop/drinkable/grade');
let here: Grade | null = null; // coming back to the Bench, it is there at once

/** How many vials on the Shelf are smell only now. What knows it is fetched when the Bench has been drawn. */
export function SmellOnlyCount() {
  const judge = useSignal(here);
  useEffect(() => {
    if (here) return;
    const come = (found: Grade) => void (judge.value = here = found);
    import('../../workshop/drinkable/grade').then(come, () => {}); // without it the Bench says nothing of it
  }, []);
  return (
    <Part of={shelf.records.value}>
      <Count judge={judge.value} />
    </Part>
  );
}

function Count({ judge }: { judge: Grade | null }) {
  const count = judge ? list('vial').filter((vial) => judge.isSmellOnly(vial)).length : 0;
  return count > 0 ? <span class="chip">smell only ×{count}</span> : null;
}
