import { expect, test } from 'vitest';
import { filled, plainly, Refusal, sentence } from '../../../src/core/text/refusal';

test('a refusal carries its sentence and what fills it; its message is plain', () => {
  const refusal = new Refusal('{vial} holds {least} to {most} g, not {mass} g of {all} g', {
    vial: { id: 'v1' },
    least: { value: 0.12345, digits: 2 },
    most: { value: 2, decimals: 1 },
    mass: -0.5,
    all: { value: 3, figures: 3 },
  });
  expect(refusal).toBeInstanceOf(Error);
  expect(refusal.message).toBe('v1 holds 0.12 to 2.0 g, not -0.5 g of 3.00 g');
  expect(refusal.what).toBe('{vial} holds {least} to {most} g, not {mass} g of {all} g');
  expect(refusal.data).toHaveProperty('mass', -0.5);
});

test('things are named as core knows them, and by their id where it does not', () => {
  const said = (name?: string) => plainly(sentence('{line} has no share', { line: { id: 'c0', name } }));
  expect([said('Citral'), said()]).toEqual(['Citral has no share', 'c0 has no share']);
});

test('a hole may occur twice, and what looks like one in a name stays', () => {
  expect(plainly(sentence('1 to {n}, not past {n}', { n: 3 }))).toBe('1 to 3, not past 3');
  expect(plainly(sentence('{name} is too strong', { name: '{n} {toString}' }))).toBe('{n} {toString} is too strong');
  expect(filled({ what: 'Mix {toString}', data: {} }, String)).toBe('Mix {toString}');
});

test('the holes of a sentence are the keys of its data: one missing or made up does not compile', () => {
  // @ts-expect-error: nothing fills {t}
  sentence('not for {t} °C');
  // @ts-expect-error: another name
  sentence('not for {t} °C', { x: 1 });
  // @ts-expect-error: one too many
  sentence('not for {t} °C', { t: 1, x: 1 });
  // @ts-expect-error: no hole at all
  expect(new Refusal('there is nothing in the vial yet', { t: 1 }).message).toBe('there is nothing in the vial yet');
});
