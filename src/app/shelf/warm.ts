import { isLabelled } from '../../records/kind/kinds';
import { ancestors } from '../../records/lineage';
import { shelf } from '../../records/shelf';
import { isStocked, takingsOf } from '../../records/stock';
import { idle } from '../../records/store/idle';
import { decidedBy } from '../../workshop/drinkable/grade';
import { tagOf } from '../../workshop/thing/labelled';
import { prepareShelf } from '../describe/shelfIndex';

/** What the pages ask of all records together; each keeps its answer until a record changes. */
const asked: readonly (() => unknown)[] = [
  () => ancestors(''),
  () => decidedBy(''),
  () => first(isStocked, takingsOf),
  () => first(isLabelled, tagOf),
];

function first<T>(isOne: (record: never) => boolean, work: (record: T & never) => unknown): unknown {
  for (const record of shelf.records.peek().values()) if (isOne(record as never)) return work(record as never);
  return undefined;
}

let changes = 0;

/** Works that out after each change of a record, while nothing else is to be done, so that the page opened next finds it ready. */
export function keepWarm(): void {
  shelf.records.subscribe(() => void warmUp(++changes));
}

async function warmUp(of: number): Promise<void> {
  const isGone = () => of !== changes;
  for (const work of asked) {
    await idle(3000);
    if (isGone()) return;
    try {
      work();
    } catch {
      // the page that shows it says what is wrong with it
    }
  }
  await prepareShelf(isGone);
}
