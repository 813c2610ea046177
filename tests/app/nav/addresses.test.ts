import { afterAll, beforeAll, expect, test, vi } from 'vitest';
import type { Wrong } from '../fault/drawn';
import { closePageInMemory, openPageInMemory, visit } from '../fault/pageInMemory';

vi.mock('idb', () => import('../fault/memoryDb'));
const root = openPageInMemory();
const id = '01a21256-0d64-7289-a153-37ad04301020';

beforeAll(async () => (await import('../fault/drawn')).openApp(root));
afterAll(async () => {
  await (await import('../fault/drawn')).closeApp(root);
  closePageInMemory();
});

const BENCH = 'Bench';
const NOT_HERE = 'Not here This is not on this phone, or was erased.';

test.each([
  ['#/%', BENCH],
  ['#/record/%E0%A4%A', BENCH],
  ['#', BENCH],
  ['#//', BENCH],
  ['#/nothing/here', BENCH],
  ['#/__proto__', BENCH],
  ['#/constructor/constructor', BENCH],
  [`#/${'x/'.repeat(5000)}`, BENCH],
  ['#!/shelf', BENCH],
  ['#/record', BENCH],
  ['#/sheet', BENCH],
  ['#/new', BENCH],
  ['#/new/nothing', BENCH],
  ['#/new/toString', BENCH],
  [`#/run/${id}`, BENCH],
  [`#/run/${id}/step/how/9`, BENCH],
  [`#/record/${id}`, NOT_HERE],
  [`#/record/${id}/edit`, NOT_HERE],
  ['#/record/__proto__', NOT_HERE],
  [`#/sheet/${id}`, NOT_HERE],
  [`#/formula/${id}`, NOT_HERE],
  [`#/catalogue/${id}`, 'Catalogue The catalogue has no entry of that name.'],
  [`#/labels/${id}`, 'Labels'],
  ['#/shelf/nothing', 'Shelf'],
  ['#/shelf/find/%00', 'Shelf'],
  ['#/book/nothing', 'Book'],
  ['#/settings/nothing', 'Settings'],
])('%s leads to the Bench, to the page above it, or says in one sentence what is not there', async (hash, expected) => {
  const { look } = await import('../fault/drawn');
  const wrong: Wrong[] = [];
  const text = await look(root, { page: hash.slice(0, 60), wrong, open: () => visit(hash) });
  expect(wrong).toEqual([]);
  expect(text.slice(0, expected.length)).toBe(expected);
});
