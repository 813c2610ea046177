import { beforeEach, expect, test } from 'vitest';
import { newRecord, shelf, takeIn } from '../../src/records/shelf';
import { forwardInWater, heldByAlcohol } from '../../src/workshop/stripToDrink';

/** In falling order of what water brings forward, and of what alcohol holds back (headspace over 12 % vol: 0.28 to 0.74), computed from published solubilities and log Kow. */
const PUBLISHED = ['limonene', 'linalool', 'eugenol', 'ethyl butanoate', 'vanillin', 'ethyl acetate'];
const CAS = ['138-86-3', '78-70-6', '97-53-0', '105-54-4', '121-33-5', '141-78-6'];

const material = (id: string, cas: string) =>
  newRecord('material', { id, name: id, code: id.slice(0, 4).toUpperCase(), cas, sort: 'substance', form: 'liquid', cautions: [] }); // prettier-ignore

beforeEach(() => {
  shelf.records.value = new Map();
  takeIn(PUBLISHED.map((name, i) => material(name, CAS[i]!)));
});

/** Name → its places. */
function placesIn(text: string): Map<string, [number, number]> {
  const rows = text
    .split(';')[0]!
    .split(', ')
    .map((one) => /^(.+) \(places? (\d+)(?: (?:or|to) (\d+))?\)$/.exec(one)!);
  return new Map(rows.map(([, name, from, to]) => [name!, [Number(from), Number(to ?? from)]]));
}

test('the published orders lie within the places told', () => {
  for (const told of [forwardInWater(PUBLISHED), heldByAlcohol(PUBLISHED)]) {
    const places = placesIn(told);
    console.info(`strip to drink: ${told}`);
    const known = PUBLISHED.filter((name) => places.has(name));
    expect(known.length).toBeGreaterThanOrEqual(4);
    known.forEach((name, i) => {
      const [from, to] = places.get(name)!;
      expect(from).toBeLessThanOrEqual(i + 1);
      expect(to).toBeGreaterThanOrEqual(i + 1);
    });
  }
});

test('what is not known is named, and one material alone has no order', () => {
  takeIn([material('unheard-of', '')]);
  expect(forwardInWater([...PUBLISHED, 'unheard-of'])).toMatch(/not known: .*unheard-of/);
  expect(forwardInWater(['limonene'])).toBe('');
  expect(heldByAlcohol(['unheard-of', 'limonene'])).toBe('');
});
