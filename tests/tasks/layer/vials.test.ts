import { beforeEach, expect, test } from 'vitest';
import type { Vial } from '../../../src/records/kind/vial';
import { newRecord, shelf, takeIn } from '../../../src/records/shelf';
import { vialsInOrder, vialWords } from '../../../src/tasks/layer/vials';
import { today } from '../../../src/workshop/today';
import { vialOnShelf } from './strips';

beforeEach(() => (shelf.records.value = new Map()));

const codes = () => vialsInOrder().map(({ code }) => code);

test('the vials layered last come first, what is made up or past its date at the end', () => {
  const [, mint, rose] = ['CARD', 'MINT', 'ROSE', 'ANIS'].map((code) => vialOnShelf(code));
  const old: Vial = { ...vialOnShelf('OLD'), useBy: today(-1) };
  const demo: Vial = { ...vialOnShelf('DEMO'), demo: true };
  takeIn([
    old,
    demo,
    newRecord('layering', {
      name: '',
      strips: [rose!, mint!].map(({ id, code }) => ({ vial: id, code, dips: 1, dippedAt: null, takenOutAt: null })),
      readings: [],
      verdict: { liking: null, decision: '', words: '' },
    }),
  ]);
  expect(codes().slice(0, 2).sort()).toEqual(['MINT', 'ROSE']);
  expect(codes().slice(2, 4).sort()).toEqual(['ANIS', 'CARD']);
  expect(codes().slice(4)).toEqual(['DEMO', 'OLD']);
});

test('a row says how its strip dries, and what is against the vial', () => {
  expect(vialWords(vialOnShelf('CARD'))).toMatch(/in ethanol.*, dries in about 2 min$/);
  expect(vialWords(vialOnShelf('PGF', { solvent: 'propylene-glycol' }))).toContain('smell it wet');
  expect(vialWords({ ...vialOnShelf('OLD'), useBy: today(-1) })).toContain('past its date');
});
