import { searchShelf } from '../../src/app/describe/shelfIndex';
import type { AnyRecord } from '../../src/records/kind/kinds';
import { newRecord, shelf, takeIn } from '../../src/records/shelf';
import { substances } from '../../src/tables/catalogue/substances';
import { vialOf } from '../tasks/count/countShelf';

const RECORDS = 5000;
const RUNS = 15; // each key is searched so often; its time is the median of these
const BUDGET = 16; // ms a key

const queries = [
  'cardamom oil',
  'ethil butirate',
  'limonen',
  'fruity pineaple',
  '5989-27-5',
  'hexenol green',
  'aldehide',
  'lot 471',
  'phenethyl isovalerate',
  'vanilin 1 %',
  'smell only isopropanol',
  'box C',
];

/** 5,000 things of a Shelf: materials named as in the catalogue, bottles with lots, vials of them. */
export function bigShelf(): AnyRecord[] {
  const records: AnyRecord[] = [];
  for (let i = 0; records.length < RECORDS; i++) {
    const row = substances[i % substances.length]!;
    const name = `${row.name}${i < substances.length ? '' : ` no. ${i}`}`;
    const code = `${row.name
      .replace(/[^a-z]/g, '')
      .slice(0, 3)
      .toUpperCase()}${i}`;
    const facts = {
      also: [...(row.also ?? [])],
      smells: [...(row.smells ?? [])],
      cas: row.cas![0],
      family: row.family,
    };
    const id = `m${i}`;
    const lot = `L-${(i * 7919) % 10007}`;
    const bottle = { id: `b${i}`, material: id, supplier: `supplier ${i % 17}`, lot, box: 'ABCDEF'[i % 6]! };
    records.push(
      newRecord('material', { id, name, code, sort: 'substance', form: 'liquid', cautions: [], ...facts }),
      newRecord('bottle', { ...bottle, grade: 'fit for drinks' }),
      ...[0.1, 0.01, 0.001].map((strength) => ({
        ...vialOf(`${code}-${strength}`, strength, { material: id }),
        name,
        code,
        lot,
      })),
    );
  }
  return records.slice(0, RECORDS);
}

const median = (times: readonly number[]) => [...times].sort((a, b) => a - b)[times.length >> 1]!;

/** Every key of typing each query, on 5,000 records; the index is made again when a record changes, and that is timed too. */
export async function searchBench(): Promise<void> {
  shelf.records.value = new Map();
  takeIn(bigShelf());
  const timed = (query: string) => {
    const start = performance.now();
    searchShelf(query, 30);
    return performance.now() - start;
  };
  const first = timed('a');
  const changes = Array.from({ length: RUNS }, (_, i) => {
    const { ...changed } = shelf.records.value.get(`b${i}`)!;
    takeIn([changed]);
    return timed('a');
  });
  const keys = queries.flatMap((query) =>
    Array.from(query, (_, end) => query.slice(0, end + 1)).map((key) => ({
      key,
      ms: median(Array.from({ length: RUNS }, () => timed(key))),
    })),
  );
  const times = keys.map(({ ms }) => ms).sort((a, b) => a - b);
  const slowest = keys.reduce((slow, one) => (one.ms > slow.ms ? one : slow));
  shelf.records.value = new Map();
  console.log(
    JSON.stringify({
      bench: 'Shelf search',
      records: RECORDS,
      keys: keys.length,
      budgetMs: BUDGET,
      medianMs: median(times),
      p95Ms: times[Math.floor(times.length * 0.95)],
      slowestKey: slowest.key,
      slowestMs: slowest.ms,
      firstIndexMs: first,
      changedIndexMs: median(changes),
    }),
  );
}
