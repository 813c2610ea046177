import { beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { shortCode } from '../../../src/core/label/shortCode';
import type { Bottle, Material } from '../../../src/records/kind/material';
import { readRecord } from '../../../src/records/kind/record';
import { kinds } from '../../../src/records/kind/kinds';
import { shelf, takeIn } from '../../../src/records/shelf';
import { bottle } from '../../../src/tasks/bottle/task';
import { catalogue, factsOf, loadCatalogue, searchCatalogue } from '../../../src/workshop/catalogue';
import { problemsOf } from '../../../src/tasks/engine/leaving';
import { dilute } from '../../../src/tasks/dilute/task';
import { startWalking } from '../walking';

beforeAll(loadCatalogue);
beforeEach(() => void (shelf.records.value = new Map()));

const row = (id: string) => catalogue.value!.rows.get(id)!;
const choose = (id: string) => ({ 'new.name': row(id).name, 'new.facts': JSON.stringify(factsOf(row(id))) });
const food = { 'new.grade': 'fit for drinks' };

function added(typed: Record<string, string>): { bottle: Bottle; material: Material } {
  const walk = startWalking(bottle, typed);
  while (walk.step().key !== 'new-grade') walk.next();
  const [kept, material] = walk.keep() as [Bottle, Material];
  return { bottle: kept, material };
}

describe('looking a name up in the catalogue', () => {
  test.each([
    ['limonene', 'd-limonene'],
    ['cardam', 'cardamom-oil'],
    ['vanilin', 'vanillin'],
    ['121-33-5', 'vanillin'],
    ['2241', 'cardamom-oil'],
    ['leaf alcohol', 'cis-3-hexen-1-ol'],
    ['pink grapefrut', ''],
    ['grapefrut', 'grapefruit-oil'],
    ['Elettaria', 'cardamom-oil'],
  ])('“%s” finds %s among the first three', (query, id) => {
    const found = searchCatalogue(query, 3).map((one) => one.id);
    if (id === '') expect(found).toEqual([]);
    else expect(found).toContain(id);
  });

  test('every entry is found by its own name and by its CAS number', () => {
    for (const one of catalogue.value!.rows.values()) {
      expect(searchCatalogue(one.name, 3).map(({ id }) => id)).toContain(one.id);
      if (one.cas) expect(searchCatalogue(one.cas[0], 6).map(({ id }) => id)).toContain(one.id);
    }
  });
});

describe('a new bottle', () => {
  test.each([
    [{ 'new.name': 'Propan-2-ol' }, 'Isopropanol'],
    [{ 'new.name': 'solvent 7', 'new.cas': '67-56-1' }, 'Methanol'],
    [
      { 'new.name': 'my own', 'new.facts': JSON.stringify({ also: ['methylated spirits'], cautions: [] }) },
      'Denatured alcohol',
    ],
  ])('of what is never fit for drinks refuses that answer: %o', (typed, name) => {
    const walk = startWalking(bottle, { ...typed, 'new.form': 'liquid' } as Record<string, string>);
    while (walk.step().key !== 'new-grade') walk.next();
    const sentence = `${name} is never fit for drinks: smell only.`;
    expect(walk.step().cautions).toEqual([sentence]);
    walk.type('new.grade', 'fit for drinks');
    expect(walk.step().cautions).toBeUndefined(); // it is said once
    expect(Object.values(problemsOf(walk.step(), walk.state()))).toEqual([sentence]);
    expect((walk.keep()[0] as Bottle).grade).toBe('smell only'); // whatever way led past the question
    walk.type('new.grade', 'smell only');
    expect(problemsOf(walk.step(), walk.state())).toEqual({});
  });

  test('from the catalogue brings CAS, FEMA, form, density with source and cautions along', () => {
    const { material, bottle: kept } = added({ ...choose('d-limonene'), ...food });
    expect(material).toMatchObject({ name: 'd-limonene', cas: '5989-27-5', form: 'liquid', code: 'LIMO' });
    expect(material.density!.source).toMatch(/^catalogue: .+/);
    expect(material.cautions).toEqual(['flammable', 'sensitiser']);
    expect(material.thresholds![0]!.source).not.toBe('');
    expect(kept.material).toBe(material.id);
    expect(readRecord(kinds.material, material).ok).toBe(true);
  });

  test('asks only what the catalogue does not know', () => {
    const walk = startWalking(bottle, choose('d-limonene'));
    expect(walk.step().ask!.map(({ name }) => name)).toEqual(['new.name', 'new.code']);
    const byHand = startWalking(bottle, { 'new.name': 'rhubarb base' });
    expect(byHand.step().ask!.map(({ name }) => name)).toEqual([
      'new.name',
      'new.code',
      'new.form',
      'new.cas',
      'new.plant',
    ]);
  });

  test('of what melts near room temperature still asks for its form', () => {
    const walk = startWalking(bottle, choose('trans-anethole'));
    expect(walk.step().ask!.map(({ name }) => name)).toContain('new.form');
  });

  test('without a name cannot go on, and says so', () => {
    const walk = startWalking(bottle);
    expect(() => walk.next()).toThrow('Material');
    expect(walk.step().problem).toBe('Type its name, or the first letters, and choose.');
  });

  test('the certificate of the lot overrides the catalogue, which stays with the material', () => {
    const { material, bottle: kept } = added({ ...choose('cardamom-oil'), 'new.density': '0,921', ...food });
    expect(kept.density).toMatchObject({ gPerMl: 0.921, source: 'as typed from the bottle or its certificate' });
    expect(material.density!.gPerMl).not.toBe(0.921);
  });

  test('a mistyped CAS number is noticed', () => {
    const walk = startWalking(bottle, { 'new.name': 'my oil', 'new.cas': '5989-27-6' });
    expect(() => walk.next()).toThrow('The check digit of 5989-27-6 does not fit');
  });

  test('its plant is known from the catalogue, or from what was typed', () => {
    expect(added({ ...choose('cardamom-oil'), ...food }).material.botanical).toBe('Elettaria cardamomum');
    const typed = { 'new.name': 'herb extract', 'new.plant': 'Hypericum perforatum', ...food };
    expect(added(typed).material.botanical).toBe('Hypericum perforatum');
  });

  test('of a material that is on the Shelf adds a bottle and no second material', () => {
    const first = added({ ...choose('cardamom-oil'), ...food });
    takeIn([first.material, first.bottle]);
    const walk = startWalking(bottle, {
      'new.name': 'cardamom oil',
      'new.material': first.material.id,
      'new.lot': 'B2',
      ...food,
    });
    const kept = walk.keep();
    expect(kept.map(({ kind }) => kind)).toEqual(['bottle']);
    expect(kept[0]).toMatchObject({ material: first.material.id, lot: 'B2' });
  });

  test('choosing in Dilute makes one material, and its density is used with its width', () => {
    const typed = { bottle: 'new', ...choose('cardamom-oil'), ...food, strength: '1', basis: '% v/v', size: '10' };
    const more = {
      solvent: 'ethanol-96',
      food: 'yes',
      measure: 'scale',
      way: 'mass',
      'solvent.g': '7',
      'material.g': '0.08',
    };
    const [vial, kept, material] = startWalking(dilute, { ...typed, ...more }).keep();
    expect([vial!.kind, kept!.kind, material!.kind]).toEqual(['vial', 'bottle', 'material']);
    expect((kept as Bottle).material).toBe(material!.id);
  });

  test('every entry of the catalogue makes a record that can be read again', () => {
    for (const one of catalogue.value!.rows.values()) {
      const { material } = added({ ...choose(one.id), ...food });
      const read = readRecord(kinds.material, JSON.parse(JSON.stringify(material)));
      expect(read.ok ? '' : `${one.name}: ${read.why}`).toBe('');
    }
  });
});

describe('a short code', () => {
  test.each([
    ['cardamom oil', 'CARD'],
    ['ethyl butyrate', 'ETBU'],
    ['cis-3-hexen-1-ol', 'HEOL'],
    ['néroli', 'NERO'],
    ['α-pinene', 'PINE'],
    ['5-methylfurfural', 'METH'],
    ['', 'MAT'],
  ])('for “%s” is %s', (name, code) => expect(shortCode(name, [])).toBe(code));

  test('is never one that is taken, and fits the strip', () => {
    const taken: string[] = [];
    for (let n = 0; n < 120; n++) taken.push(shortCode('cardamom oil', taken));
    expect(new Set(taken).size).toBe(120);
    expect(taken.every((code) => /^[A-Z0-9]{2,6}$/.test(code))).toBe(true);
  });
});
