import { beforeEach, describe, expect, test } from 'vitest';
import { describe as wordsOf } from '../../../src/app/describe/describe';
import { changed, editables } from '../../../src/app/edit/editable';
import { kinds } from '../../../src/records/kind/kinds';
import type { Material } from '../../../src/records/kind/material';
import { readRecord } from '../../../src/records/kind/record';
import { newRecord, shelf, takeIn } from '../../../src/records/shelf';
import { catalogue, factsOf, loadCatalogue } from '../../../src/workshop/catalogue';

const ownMaterial = newRecord('material', {
  id: 'own',
  name: 'bog myrtle oil',
  code: 'BOG',
  sort: 'natural',
  form: 'liquid',
  cautions: [],
});

/** The material as it stands on the Shelf after it was changed. */
function after(record: Material, typed: Record<string, string>): Material {
  const now = changed(record, typed);
  expect(now).not.toBeNull();
  const read = readRecord(kinds.material, now as Material);
  if (!read.ok) throw new Error(read.why);
  return read.value;
}

const more = (n: number) => ({ 'thresholds.more': String(n) });
const one = (i: number, facts: Record<string, string>) =>
  Object.fromEntries(Object.entries(facts).map(([part, text]) => [`thresholds.${i}.${part}`, text]));
const typedOnce = after(ownMaterial, { ...more(1), ...one(0, { low: '0,7' }) });

beforeEach(() => {
  shelf.records.value = new Map();
  takeIn([ownMaterial]);
});

describe('an odour threshold given by hand', () => {
  test('one number is enough: in water, as typed; its page says so', () => {
    expect(typedOnce.thresholds).toEqual([
      { medium: 'water', kind: 'detection', low: 0.7, high: 0.7, unit: 'µg/kg', source: 'as typed', own: true },
    ]);
    expect(wordsOf(typedOnce).facts).toContainEqual(['Threshold in water', '0.7 µg/kg', 'detection; as typed']);
  });

  test('in air it is told in mg/m³ unless another unit is chosen, and with its own source', () => {
    const typed = one(0, { low: '0.02', high: '0,3', medium: 'Air', kind: 'recognition', source: 'our own noses' });
    const [air] = after(ownMaterial, { ...more(1), ...typed }).thresholds!;
    expect(air).toMatchObject({ medium: 'Air', low: 0.02, high: 0.3, unit: 'mg/m³', source: 'our own noses' });
    const [other] = after(ownMaterial, { ...more(1), ...typed, ...one(0, { unit: 'µg/L' }) }).thresholds!;
    expect(other!.unit).toBe('µg/L');
  });

  test('is changed and taken out where it stands; others stay', () => {
    const two = after(typedOnce, { ...more(1), ...one(1, { low: '5', medium: 'beer' }) });
    expect(two.thresholds!.map(({ medium }) => medium)).toEqual(['water', 'beer']);
    const changedOne = after(two, one(0, { unit: 'mg/kg' }));
    expect(changedOne.thresholds).toEqual([{ ...two.thresholds![0], unit: 'mg/kg' }, two.thresholds![1]]);
    const left = after(two, one(0, { low: '' }));
    expect(left.thresholds).toEqual([two.thresholds![1]]);
    expect(after(left, one(0, { low: ' ' })).thresholds).toBeUndefined();
  });

  test('what the catalogue says stays beside it, word for word, and is not asked', async () => {
    await loadCatalogue();
    const row = [...catalogue.value!.rows.values()].find(({ thresholds = [] }) => thresholds.length > 2)!;
    const facts = factsOf(row);
    const known = { ...ownMaterial, ...facts } as Material;
    expect(editables(known).some(({ field }) => field.name.startsWith('thresholds'))).toBe(false);
    const place = facts.thresholds!.length;
    const now = after(known, { ...more(1), ...one(place, { low: '3' }) });
    expect(now.thresholds!.slice(0, place)).toEqual(facts.thresholds);
    expect(now.thresholds!.slice(place)).toMatchObject([{ low: 3, own: true }]);
    expect(after(now, one(place, { low: '' })).thresholds).toEqual(facts.thresholds);
    expect(after(known, { name: 'renamed' }).thresholds).toEqual(facts.thresholds);
  });

  test.each([
    [{ low: 'little' }, 'is not a number'],
    [{ low: '0' }, 'at least 0.000001 µg/kg'],
    [{ high: '4' }, 'still empty'],
    [{ low: '4', high: '3' }, 'less than where it begins'],
    [{ low: '4', medium: '' }, 'still empty'],
  ])('%o gets one sentence, and nothing is stored', (facts, sentence) => {
    const typed: Record<string, string> = { ...more(1), ...one(0, facts) };
    expect(changed(ownMaterial, typed)).toBeNull();
    const said = editables(ownMaterial, typed).flatMap(({ field, text }) => {
      const answer = field.read(typed[field.name] ?? text);
      return answer.ok ? [] : answer.why;
    });
    expect(said.join()).toContain(sentence);
  });

  test('one that is left empty is none', () => {
    expect(after(ownMaterial, more(2))).toEqual(ownMaterial);
  });
});

describe('a material of the person’s own', () => {
  test('can be given every fact that one of the catalogue brings', async () => {
    await loadCatalogue();
    const brought = new Set([...catalogue.value!.rows.values()].flatMap((row) => Object.keys(factsOf(row))));
    brought.delete('catalogue'); // where it was copied from
    brought.delete('soldAtLeast'); // what is typed as its purity goes before it
    const typed = { ...more(1), ...one(0, { low: '1' }) };
    const asked = new Set(editables(ownMaterial, typed).map(({ field }) => field.name.split('.')[0]!));
    expect([...brought].filter((fact) => !asked.has(fact))).toEqual([]);
  });

  test('as typed, each with that as its source', () => {
    const now = after(ownMaterial, {
      sort: 'substance',
      family: 'Aldehyde',
      boils: '202',
      density: '0,91',
      'density.within': '0.01',
      cautions: 'flammable, Sensitiser',
      'notes.0': 'Smells stronger after a week.',
    });
    expect(now).toMatchObject({
      sort: 'substance',
      family: 'aldehyde',
      boils: { value: 202, source: 'as typed by hand' },
      density: { gPerMl: 0.91, halfWidth: 0.01, source: 'as typed by hand' },
      cautions: ['flammable', 'sensitiser'],
      notes: ['Smells stronger after a week.'],
    });
    expect(wordsOf(now).facts!.flat().join()).toContain('May cause skin sensitisation');
    const emptied = after(now, { cautions: '', 'notes.0': '', 'density.within': '', boils: '', family: '' });
    expect(emptied).toMatchObject({ cautions: [], density: { gPerMl: 0.91, source: 'as typed by hand' } });
    expect(Object.keys(emptied)).not.toEqual(expect.arrayContaining(['notes']));
  });

  test('a caution that is none is told, one that stood there is no fault', () => {
    expect(changed(ownMaterial, { cautions: 'flamable' })).toBeNull();
    const odd = { ...ownMaterial, cautions: ['label'] };
    expect(after(odd, { cautions: 'label, flammable' }).cautions).toEqual(['label', 'flammable']);
  });

  test('a ± typed for a density of the catalogue is told to be typed', () => {
    const known = { ...ownMaterial, density: { gPerMl: 0.9, atC: 20, source: 'a book', halfWidth: 0.02 } };
    const { density } = after(known, { 'density.within': '0.005' });
    expect(density).toMatchObject({ gPerMl: 0.9, halfWidth: 0.005, source: 'a book; ± as typed by hand' });
    expect(after(known, { density: '0.88' }).density).toMatchObject({ gPerMl: 0.88, halfWidth: 0.02 });
  });
});
