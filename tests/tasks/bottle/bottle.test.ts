import { beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { shortCode } from '../../../src/core/label/shortCode';
import type { Bottle, Material } from '../../../src/records/kind/material';
import { readRecord } from '../../../src/records/kind/record';
import { kinds } from '../../../src/records/kind/kinds';
import { shelf, takeIn } from '../../../src/records/shelf';
import { bottle } from '../../../src/tasks/bottle/task';
import { catalogue, factsOf, loadCatalogue, searchCatalogue } from '../../../src/workshop/catalogue';
import { problemsOf } from '../../../src/tasks/engine/leaving';
import { slotsOf, sentenceText, firstOpen } from '../../../src/tasks/engine/card';
import { fullOf } from '../../../src/records/stock';
import { dilute } from '../../../src/tasks/dilute/task';
import { supply } from '../../../src/tasks/supply/task';
import { startWalking } from '../walking';

beforeAll(loadCatalogue);
beforeEach(() => void (shelf.records.value = new Map()));

const row = (id: string) => catalogue.value!.rows.get(id)!;
const choose = (id: string) => ({ 'new.name': row(id).name, 'new.facts': JSON.stringify(factsOf(row(id))) });
const food = { 'new.grade': 'fit for drinks' };

function added(typed: Record<string, string>): { bottle: Bottle; material: Material } {
  const walk = startWalking(bottle, typed);
  while (walk.step().key !== 'new-card') walk.next();
  expect(problemsOf(walk.step(), walk.state())).toEqual({});
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
    ['limon', 'lemon-oil'],
  ])('“%s” finds %s among the first three', (query, id) => {
    const found = searchCatalogue(query, 3).map((one) => one.id);
    if (id === '') expect(found).toEqual([]);
    else expect(found).toContain(id);
  });

  test.each([
    ['limon', 'd-limonene'],
    ['lemo', 'lemon-oil'],
    ['card', 'cardamom-oil'],
    ['van', 'vanillin'],
    ['pepp', 'peppermint-oil'],
    ['citr', 'citral'],
  ])('“%s” finds %s first', (query, id) => expect(searchCatalogue(query, 1)[0]!.id).toBe(id));

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
    while (walk.step().key !== 'new-card') walk.next();
    const sentence = `${name} is never fit for drinks: smell only.`;
    expect(walk.step().cautions).toContain(sentence);
    walk.type('new.grade', 'fit for drinks');
    expect(walk.step().cautions).not.toContain(sentence); // it is said once, as what is wrong
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
    const about = ['new.name', 'new.code', 'new.form', 'new.cas', 'new.plant'];
    const asked = (walk: ReturnType<typeof startWalking>) =>
      walk.step().ask!.flatMap(({ name }) => (about.includes(name) ? name : []));
    expect(asked(startWalking(bottle, choose('d-limonene')))).toEqual(['new.name', 'new.code']);
    const byHand = startWalking(bottle, { 'new.name': 'rhubarb base' });
    expect(asked(byHand)).toEqual(['new.name']);
    byHand.next();
    expect(asked(byHand)).toEqual(about);
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
    const walk = startWalking(bottle, { 'new.name': 'my oil', 'new.cas': '5989-27-6', ...food });
    walk.next();
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

const received = '2026-05-04';
const bought = (typed: Record<string, string>) => added({ ...choose('cardamom-oil'), ...food, ...typed });
/** A bottle of before, with what its run was asked. */
const shelve = (typed: Record<string, string>, asked: Record<string, string>) => {
  const { bottle: kept, material } = bought(typed);
  takeIn([material, Object.assign(kept, { done: { from: received, to: received, asked } })]);
  return material;
};

describe('the card of a bottle', () => {
  test('can be left as soon as its grade is said, which nothing fills in', () => {
    const walk = startWalking(bottle, choose('cardamom-oil'));
    const open = () => firstOpen(slotsOf(walk.state(), walk.step()));
    expect(open()).toMatchObject({ state: 'empty', asks: 'Say the grade', value: '' });
    walk.type('new.grade', 'smell only');
    expect(open()).toBeUndefined();
    expect((walk.keep()[0] as Bottle).grade).toBe('smell only');
  });

  test('takes the supplier, box and amount of last time along, and never the grade', () => {
    const typed = { 'new.supplier': 'Pebblewick', 'new.box': 'A', 'new.amount': '30', 'new.unit': 'mL' };
    shelve(typed, typed);
    const walk = startWalking(bottle, { ...choose('d-limonene') });
    expect(walk.step().problem).toMatch(/grade/);
    walk.type('new.grade', 'fit for drinks');
    expect(walk.keep()[0]).toMatchObject({ supplier: 'Pebblewick', box: 'A', grade: 'fit for drinks' });
    expect((walk.keep()[0] as Bottle).amountG).toBeCloseTo(30 * 0.8411, 6);
  });

  test('weighs what is given in mL by the density of the lot, else the known one with its ±, else a typical one', () => {
    expect(bought({ 'new.amount': '10', 'new.unit': 'mL', 'new.density': '0.92' }).bottle).toMatchObject({
      amountG: 9.2,
    });
    const known = bought({ 'new.amount': '10', 'new.unit': 'mL' }).bottle;
    expect(known.amountG).toBeCloseTo(9.259, 6);
    expect(known.amountU).toBeGreaterThan(0);
    const typical = added({ 'new.name': 'my oil', 'new.amount': '10', 'new.unit': 'mL', ...food }).bottle;
    expect(typical.amountG).toBeCloseTo(9.5, 6);
    expect(typical.amountU).toBeCloseTo(1.1 / Math.sqrt(3), 6);
    const { sources } = fullOf(typical)!;
    expect(sources[0]!.u).toBeCloseTo(Math.hypot(0.095, 1.1 / Math.sqrt(3)), 6);
    expect(bought({ 'new.amount': '10', 'new.unit': 'g' }).bottle).toMatchObject({ amountG: 10 });
    expect(bought({ 'new.amount': '10', 'new.unit': 'g' }).bottle.amountU).toBeUndefined();
  });

  test('of a solid that is chosen by its name is in g too', () => {
    const walk = startWalking(bottle);
    for (const [key, text] of Object.entries(choose('vanillin'))) walk.type(key, text);
    expect(walk.step().ask!.find(({ name }) => name === 'new.amount')).toMatchObject({ unit: 'g' });
  });

  test('asks for a solid in g, whatever the last bottle was in', () => {
    shelve({ 'new.amount': '30', 'new.unit': 'mL' }, { 'new.amount': '30', 'new.unit': 'mL' });
    const walk = startWalking(bottle, { ...choose('vanillin'), ...food });
    const amount = walk.step().ask!.find(({ name }) => name === 'new.amount')!;
    expect(amount).toMatchObject({ unit: 'g' });
    expect(amount.preset).toBeUndefined();
  });

  test('says what is in it, without what was left out', () => {
    const walk = startWalking(bottle, { ...choose('cardamom-oil'), ...food, 'new.received': received });
    expect(sentenceText(walk.state(), walk.step())).toMatch(/^cardamom oil, CARD, food grade received .*2026$/);
    walk.type('new.lot', 'C-1');
    walk.type('new.amount', '10');
    walk.type('new.price', '14');
    expect(sentenceText(walk.state(), walk.step())).toMatch(
      /^cardamom oil, CARD, 10 mL, lot C-1, food grade received .*2026, for 14/,
    );
  });

  test('goes on to the next bottle from the same supplier on the same day', () => {
    const walk = startWalking(bottle, {
      ...choose('cardamom-oil'),
      ...food,
      'new.supplier': 'P',
      'new.received': received,
    });
    expect(walk.step().offers).toEqual([
      {
        words: 'Save and next',
        leave: true,
        start: { task: 'bottle', typed: { 'new.following': 'yes', 'new.supplier': 'P', 'new.received': received } },
      },
    ]);
    takeIn(walk.keep());
    const next = startWalking(bottle, walk.step().offers![0]!.start!.typed);
    expect(next.step()).toMatchObject({
      key: 'new-material',
      more: ['cardamom oil is on the Shelf. Now the next one.'],
    });
  });

  test('in a run of the first version is as it was left: an amount in g, and nothing of last time', () => {
    shelve({ 'new.supplier': 'Pebblewick' }, { 'new.supplier': 'Pebblewick', 'new.amount': '30', 'new.unit': 'mL' });
    const typed = { ...choose('d-limonene'), 'new.amount': '9', ...food };
    const run = {
      ...startWalking(bottle, typed).state(),
      at: 'new-grade',
      done: { 'new-material': 't', 'new-bottle': 't' },
    };
    const [kept] = bottle.keep(run) as [Bottle];
    expect(kept).toMatchObject({ supplier: '', amountG: 9 });
    expect(kept.received).toBeUndefined();
    expect(kept.amountU).toBeUndefined();
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

describe('what is a solvent', () => {
  const cardOf = (typed: Record<string, string>) => {
    const walk = startWalking(bottle, typed);
    while (walk.step().key !== 'new-card') walk.next();
    return walk.step();
  };

  test.each([
    ['by its CAS number', 'propane-1-2-diol', 'propylene-glycol'],
    ['by its name', { 'new.name': 'MCT' }, 'mct'],
    ['by its name and an own number', { 'new.name': 'my glycerin', 'new.cas': '56-81-5' }, 'glycerol'],
  ])('%s says so, and is offered as one in place of this run', (_, typed, solvent) => {
    const { draw, offers } = cardOf(typeof typed === 'string' ? choose(typed) : (typed as Record<string, string>));
    expect((draw!(undefined as never).props as { children: string }).children).toMatch(/This is a solvent/);
    expect(offers![0]).toMatchObject({
      instead: true,
      start: { task: 'supply', typed: { [`came.${solvent}`]: 'yes' } },
    });
    const supplies = startWalking(supply, offers![0]!.start!.typed);
    supplies.type(`grade.${solvent}`, 'fit for drinks');
    expect(supplies.keep()).toMatchObject([{ kind: 'supply', sort: 'solvent', solvent }]);
  });

  test('of several strengths leaves it to the list which it is', () => {
    expect(cardOf(choose('ethanol')).offers![0]!.start).toEqual({ task: 'supply', typed: {} });
  });

  test.each(['d-limonene', 'water mint oil', 'et'])('is not said of what is none: %s', (name) => {
    const { draw, offers } = cardOf({ 'new.name': name });
    expect(draw).toBeUndefined();
    expect(offers![0]!.words).toBe('Save and next');
  });
});

describe('naming', () => {
  test('what is found is the next tap, and a material of one’s own the other way', () => {
    const found = startWalking(bottle, { 'new.name': 'limo' }).step();
    expect(found).toMatchObject({ drawnFirst: true, done: 'Own material “limo”' });
    expect(startWalking(bottle, { 'new.name': 'rhubarb base of mine' }).step().drawnFirst).toBe(false);
    expect(startWalking(bottle).step().drawnFirst).toBe(false);
  });
});

describe('the bottle of an ingredient', () => {
  const juice = { 'new.name': 'Yuzu juice', 'new.preparation': 'juice', ...food };

  test('says what else it holds, and is weighed by that', () => {
    const said = {
      'new.brix': '8',
      'new.acid': '6',
      'new.allergens': 'sulphites',
      'new.amount': '1000',
      'new.price': '20',
    };
    const { bottle: kept, material } = added({ ...juice, ...said, 'new.caffeine': '5' });
    expect(material).toMatchObject({ preparation: 'juice', sort: 'natural' });
    expect(kept).toMatchObject({ holds: { brix: 8, acid: 0.06 }, allergens: ['sulphites'] });
    expect(kept.constituents).toEqual([{ cas: '58-08-2', name: 'caffeine', share: 5e-6 }]);
    expect(kept.amountG).toBeCloseTo(1000 * 1.0347, 0); // as 9.16 °Brix of sugar, CRC Handbook between 9 and 10
    expect(readRecord(kinds.bottle, kept)).toEqual({ ok: true, value: kept });
  });

  test('asks nothing more of an aroma material, and nothing that cannot be', () => {
    const walk = startWalking(bottle, { 'new.name': 'Yuzu oil', ...food });
    while (walk.step().key !== 'new-card') walk.next();
    expect(walk.step().ask!.map(({ name }) => name)).not.toContain('new.brix');
    walk.type('new.preparation', 'tincture');
    expect(walk.step().ask!.map(({ name }) => name)).toContain('new.brix');
    walk.type('new.brix', '60');
    walk.type('new.abv', '90');
    expect(walk.step().problem).toContain('at most all of it');
    walk.type('new.abv', '20');
    expect(walk.step().problem).toBeUndefined();
    walk.type('new.allergens', 'milk, sand');
    expect(problemsOf(walk.step(), walk.state())['new.allergens']).toContain('“sand” is none of them');
  });
});
