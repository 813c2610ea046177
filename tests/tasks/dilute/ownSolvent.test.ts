import { beforeEach, describe, expect, test } from 'vitest';
import { ethanolDensity, ethanolMassFraction } from '../../../src/core/liquid/ethanol';
import { celsius, volumeFraction } from '../../../src/core/number/units';
import { changed, editables } from '../../../src/app/edit/editable';
import { describe as described } from '../../../src/app/describe/describe';
import { batchTable } from '../../../src/app/sheet/batchTable';
import { sheetRows } from '../../../src/app/sheet/sheetRows';
import type { Batch } from '../../../src/records/kind/batch';
import type { AnyRecord, RecordOf } from '../../../src/records/kind/kinds';
import { newRecord, shelf, takeIn } from '../../../src/records/shelf';
import { batch } from '../../../src/tasks/batch/task';
import { dilute } from '../../../src/tasks/dilute/task';
import { abvLines } from '../../../src/tasks/dose/abvTerms';
import { glassOf } from '../../../src/tasks/dose/glass';
import { dose } from '../../../src/tasks/dose/task';
import { slotOf } from '../../../src/tasks/engine/card';
import { problemsOf } from '../../../src/tasks/engine/leaving';
import { alcoholOfVial } from '../../../src/workshop/thing/carrier';
import { dropOf } from '../../../src/workshop/dropMass';
import { refusalOf } from '../../../src/workshop/drinkable/grade';
import { liquidOfVial, solventsOnHand } from '../../../src/workshop/onHand';
import { resultText } from '../../../src/ui/controls/result';
import { startWalking, type Walker } from '../walking';
import { batchShelf, clearPlan } from '../batch/batchShelf';
import { weighAll } from '../batch/batchRuns';

const material = newRecord('material', {
  id: 'm',
  name: 'card oil',
  code: 'CARD',
  sort: 'natural',
  form: 'liquid',
  cautions: [],
});
const bottle = newRecord('bottle', { id: 'b', material: 'm', supplier: '', lot: 'L1', grade: 'fit for drinks' });

beforeEach(() => {
  shelf.records.value = new Map();
  takeIn([material, bottle]);
});

/** A dilution at its card, in a solvent of one's own. */
function toOwnSolvent(): Walker {
  return startWalking(dilute, {
    bottle: 'b',
    strength: '1',
    size: '15',
    solvent: 'new',
    measure: 'syringe',
    dropper: 'typical',
  });
}

/** Makes a vial in a solvent of one's own, by a dropper no one has weighed. */
function vialIn(
  answers: Record<string, string>,
  food = 'yes',
): { vial: RecordOf<'vial'>; solvent: RecordOf<'solvent'> } {
  const run = toOwnSolvent();
  for (const [key, text] of Object.entries({ 'solvent.name': 'Grain spirit', ...answers })) run.type(key, text);
  run.type(foodOf(run).name, food);
  run.next();
  run.tap('source', run.step().pad!.target!);
  const records = run.keep() as AnyRecord[];
  takeIn(records);
  const [vial, solvent] = ['vial', 'solvent'].map((kind) => records.find((record) => record.kind === kind));
  return { vial: vial as RecordOf<'vial'>, solvent: solvent as RecordOf<'solvent'> };
}

/** The question whether the solvent is food grade. */
function foodOf(run: Walker) {
  return run.step().ask!.find(({ name }) => name.startsWith('food'))!;
}

/** A hundred drops of a vial into 250 mL of a drink without alcohol. */
function dosed(vial: string): Walker {
  const run = startWalking(dose, {
    vial,
    dropper: 'typical',
    base: 'new',
    'base.name': 'soda',
    'base.brix': '8',
    'base.ml': '250',
  });
  run.tap('drops', 100);
  return run;
}

/** What the sheet of the rules says of its alcohol. */
const termsIn = (run: Walker) => abvLines(glassOf(run.state(), 1)!);

const screensOf = (run: Walker) => {
  const seen: string[] = [];
  for (let i = 0; i < 12; i++) {
    const { key, say, more = [], results = [] } = run.step();
    seen.push([key, say, ...more, ...results.map((one) => `${one.label} ${resultText(one)}`)].join(' | '));
    try {
      run.next();
    } catch {
      break;
    }
  }
  return seen.join('\n');
};

const yes = { 'solvent.alcohol': 'yes' };
const unknown = { 'solvent.alcohol': 'unknown', 'solvent.density': '0.8114' };

describe('a solvent of one’s own', () => {
  test('is not taken before it was said whether it is alcohol', () => {
    const run = toOwnSolvent();
    run.type('solvent.name', 'Grain spirit');
    run.type('solvent.density', '0.81');
    expect(() => run.next()).toThrow('Is it alcohol?');
    run.type('solvent.alcohol', 'yes');
    expect(() => run.next()).toThrow('Alcohol');
    run.type('solvent.abv', '95');
    run.type(foodOf(run).name, 'yes');
    run.next();
    expect(run.step().key).toBe('drops');
  });

  test.each([
    ['95', 'ethanol', 0.95],
    ['61', 'ethanol', 0.61],
    ['60', 'dilute spirit', 0.6],
    ['20', 'dilute spirit', 0.2],
    ['19', 'unknown', 0.19],
  ])('of %s % vol has the drop of %s, and the density of R 22', (percent, liquid, abv) => {
    const { vial, solvent } = vialIn({ ...yes, 'solvent.abv': percent });
    const rho = ethanolDensity(ethanolMassFraction(volumeFraction(abv)), celsius(20));
    expect(solvent.density.gPerMl).toBeCloseTo(rho, 9);
    expect(solvent.density.source).toContain('R 22');
    expect(vial.solvent!.abv).toBeCloseTo(abv, 12);
    expect(liquidOfVial(vial).liquid).toBe(liquid);
    expect(alcoholOfVial(vial)!).toBeGreaterThan(0.95 * abv);
    expect(alcoholOfVial(vial)!).toBeLessThan(abv);
  });

  test('grows with the warmth of the room as ethanol and water do, and within what liquids do where nothing is known', () => {
    const { solvent } = vialIn({ ...yes, 'solvent.abv': '95' });
    const other = vialIn(unknown).solvent;
    takeIn([newRecord('settings', { ...shelf.settings.value, id: 'settings', roomC: 30 } as never)]);
    const now = (id: string) => solventsOnHand().find((one) => one.id === id)!.now;
    const rho = (t: number) => ethanolDensity(ethanolMassFraction(volumeFraction(0.95)), celsius(t)) as number;
    expect(now(solvent.id).value).toBeCloseTo(rho(30), 9);
    const { value, sources } = now(other.id);
    const u = Math.hypot(...sources.map((source) => source.u));
    expect(value - Math.sqrt(3) * u).toBeLessThanOrEqual(0.8114 / (1 + 0.0011 * 10));
    expect(value + Math.sqrt(3) * u).toBeGreaterThanOrEqual(0.8114 / (1 + 0.0002 * 10) - 1e-4);
  });

  test('without alcohol is 0, and that is an answer', () => {
    const { vial, solvent } = vialIn({ 'solvent.alcohol': 'none', 'solvent.density': '1.2' });
    expect(solvent.abv).toBe(0);
    expect(alcoholOfVial(vial)).toBe(0);
    const run = dosed(vial.id);
    expect(termsIn(run)[0]).toMatch(/^0\.05 % ABV: met/);
    expect(screensOf(run)).toContain('Alcohol of the whole 0 % ABV');
  });

  test('of 95 % vol is counted in the drink', () => {
    const { vial } = vialIn({ ...yes, 'solvent.abv': '95' });
    const run = dosed(vial.id);
    const seen = screensOf(run);
    expect(termsIn(run)[0]).toMatch(/^0\.05 % ABV: exceeded/);
    expect(seen).toMatch(/Alcohol of the whole \(0\.7\d ± 0\.\d+\) % ABV/);
    expect(seen).not.toContain('not known');
  });

  test('of which no one knows is not known wherever alcohol is told, never 0, and no line about alcohol is kept', () => {
    const { vial, solvent } = vialIn(unknown);
    expect(alcoholOfVial(vial)).toBeNull();
    const drop = dropOf('typical', liquidOfVial(vial)).mgPerDrop;
    expect([drop.value, drop.sources[0]!.u * Math.sqrt(3)].map((one) => Math.round(one))).toEqual([40, 30]);
    const run = dosed(vial.id);
    const seen = screensOf(run);
    expect(seen).toContain('No one has said how much alcohol is in Grain spirit');
    expect(seen).toContain('Alcohol of the whole not known');
    expect(termsIn(run)).toEqual([
      expect.stringContaining('Alcohol: not known. No one has said how much alcohol is in Grain spirit'),
    ]);
    expect(seen).not.toMatch(/met|exceeded|whole 0/);
    const tasting = run.keep()[0] as RecordOf<'tasting'>;
    takeIn([tasting]);
    expect(tasting.abv).toBeUndefined();
    expect(described(tasting).facts).toContainEqual(['Alcohol of the whole', 'not known']);
    expect(described(vial).facts).toContainEqual(['Alcohol', 'not known']);
    expect(described(solvent).facts).toContainEqual(['Alcohol', 'not known']);
  });

  test('kept before its alcohol was asked can be completed, and then that of its vials is known', () => {
    const { vial, solvent } = vialIn(unknown);
    expect(editables(solvent).map(({ field }) => field.name)).toEqual(['name', 'abv', 'cas', 'density', 'flashC']);
    takeIn([changed(solvent, { abv: '95' })!]);
    expect(alcoholOfVial(vial)!).toBeGreaterThan(0.9);
    expect(liquidOfVial(vial).liquid).toBe('ethanol');
    takeIn([changed(solvent, { abv: '0', density: '' })!]);
    expect(alcoholOfVial(vial)).toBe(0);
    expect(solventsOnHand().at(-1)!.density.gPerMl).toBe(0.8114);
  });

  test('in a run of an older version, which did not ask, is not known', () => {
    const run = startWalking(dilute, {
      bottle: 'b',
      strength: '1',
      size: '15',
      solvent: 'new',
      'solvent.name': 'Grain spirit 95 %',
      'solvent.density': '0.8114',
      food: 'yes',
    });
    expect(foodOf(run).name).toBe('food');
    run.type('solvent.alcohol', 'unknown'); // it is asked now, before the run goes on
    run.next();
    expect(run.step().key).toBe('drops');
  });
});

describe('a batch with a solvent of which no one knows the alcohol', () => {
  test('says so on its screens, record and sheet', () => {
    takeIn(batchShelf());
    const own = newRecord('solvent', {
      id: 'own',
      name: 'Grain spirit',
      density: { gPerMl: 0.81, atC: 20, source: 'test' },
      food: true,
      dryOff: 'unknown',
    });
    takeIn([own]);
    const { 'carrier.food': _, ...plan } = clearPlan;
    const run = weighAll({ ...plan, carrier: 'own', 'carrier.food.own': 'yes' });
    const text = batch
      .steps(run)
      .flatMap(({ key, more = [], results = [] }) => [
        key,
        ...more,
        ...results.map((one) => `${one.label} ${resultText(one)}`),
      ])
      .join('\n');
    expect(text).toContain('Alcohol: ‹not known›. No one has said how much alcohol is in Grain spirit');
    expect(text).toContain('Alcohol not known');
    expect(text).not.toMatch(/% ABV: ‹kept›/);
    const made = batch.keep(run)[0] as Batch;
    expect(made.drink.abvUnknown).toBe(true);
    takeIn([made]);
    expect(JSON.stringify(sheetRows(made))).toContain('["not known"]');
    expect(batchTable(made)).toMatch(/alcohol,not known,,% ABV/);
    const { line, results } = described(made);
    expect(line).toContain('alcohol not known');
    expect(results!.map((one) => `${one.label} ${resultText(one)}`)).toContain('Alcohol not known');
    const known = weighAll({ ...plan, carrier: 'propylene-glycol', 'carrier.food.propylene-glycol': 'yes' });
    expect((batch.keep(known)[0] as Batch).drink.abvUnknown).toBeUndefined();
  });
});

describe('a solvent that is never fit for drinks', () => {
  test.each([
    ['Isopropyl alcohol 99 %', '', 'Isopropanol'],
    ['my cleaner', '67-63-0', 'Isopropanol'],
    ['Alcohol denat.', '', 'Denatured alcohol'],
  ])('%s %s refuses the food answer, and its vials stay smell only', (name, cas, called) => {
    const run = toOwnSolvent();
    for (const [key, text] of Object.entries({ 'solvent.name': name, 'solvent.cas': cas, ...unknown }))
      run.type(key, text);
    const sentence = `${called} is never fit for drinks: smell only.`;
    const food = foodOf(run);
    run.type(food.name, 'yes');
    expect(Object.values(problemsOf(run.step(), run.state()))).toEqual([sentence]);
    expect(slotOf(run.state(), foodOf(run))).toMatchObject({ state: 'impossible', wrong: sentence });
    expect(() => run.next()).toThrow(sentence);
    run.type(food.name, 'no');
    run.next();
  });

  test('and was called food grade by an older version is not chosen for a drink any more, nor are its vials', () => {
    const { vial, solvent } = vialIn(unknown);
    takeIn([{ ...solvent, name: 'isopropanol' } as AnyRecord]);
    expect(solventsOnHand().find(({ id }) => id === solvent.id)!.foodPossible).toBe(false);
    expect(refusalOf(vial)).not.toBeNull();
  });
});
