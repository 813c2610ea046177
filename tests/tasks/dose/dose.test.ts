import { beforeEach, describe, expect, test } from 'vitest';
import { expanded } from '../../../src/core/number/measured';
import type { RunEvent } from '../../../src/records/kind/run';
import { takeIn } from '../../../src/records/shelf';
import { dose } from '../../../src/tasks/dose/task';
import { fold, type RunState } from '../../../src/tasks/engine/fold';
import { problemsOf } from '../../../src/tasks/engine/leaving';
import { placeOf } from '../../../src/tasks/engine/place';
import rows from '../../reference/dosage.json' with { type: 'json' };

const worked = (id: string) => rows.rows.find((row) => row.id === id)!;
const sure = (value: number) => ({ value, sources: [] });
const ethanol = {
  id: 'ethanol-96',
  name: 'ethanol 96 % vol',
  density: { gPerMl: 0.80742, atC: 20, source: 'OIML R 22' },
  food: true,
  dryOff: 'minutes',
};
const isopropanol = { ...ethanol, id: 'isopropanol-99', name: 'isopropanol 99 %', food: false };
const envelope = { v: 1, made: '2025-01-01T08:00:00.000Z', from: [] as string[] };

function vialOf(id: string, code: string, facts: object = {}) {
  return {
    ...envelope,
    id,
    kind: 'vial',
    code,
    name: `${code} oil`,
    solvent: ethanol,
    sizeMl: 10,
    uses: [],
    contents: [{ material: `m-${code}`, name: `${code} oil`, strength: sure(0.01) }],
    label: { value: 1, basis: '% w/w' },
    massG: sure(8),
    densityGPerMl: 0.808,
    grade: 'fit for drinks',
    madeOn: '2025-01-01',
    useBy: '2026-01-01',
    supplier: '',
    lot: '',
    ...facts,
  };
}

const bottle = (id: string, grade: string) => ({
  ...envelope,
  id,
  kind: 'bottle',
  material: 'm',
  supplier: 'Saltmarsh Supplies',
  lot: '7',
  grade,
});

/** A dropper whose drops weigh exactly 22 mg of ethanol, with no scatter. */
const dropper = { ...envelope, id: 'd22', kind: 'dropper', name: 'Pipette 22', tip: '' };
const calibration = {
  ...envelope,
  id: 'c22',
  kind: 'calibration',
  dropper: 'd22',
  liquid: { id: 'ethanol-96', name: 'ethanol' },
  readings: [{ drops: 20, massG: 0.44 }],
  readabilityG: 0.001,
  mgPerDrop: sure(22),
  spread: 0,
};

beforeEach(() =>
  takeIn([
    dropper,
    calibration,
    bottle('b-food', 'fit for drinks'),
    bottle('b-smell', 'smell only'),
    vialOf('v-card', 'CARD'),
    vialOf('v-pgf', 'PGF', { contents: [{ material: 'm-PGF', name: 'PGF oil', strength: sure(0.002) }] }),
    vialOf('v-hex', 'HEX', { solvent: isopropanol, grade: 'smell only' }),
    vialOf('v-thin', 'THIN', { from: ['v-hex'], uses: [{ id: 'v-hex', massG: 1 }] }),
    vialOf('v-low', 'LOW', { from: ['v-thin'], uses: [{ id: 'v-thin', massG: 1 }] }),
    vialOf('v-bottle', 'BOT', { from: ['b-smell'], uses: [{ id: 'b-smell', massG: 1 }] }),
    vialOf('v-gone', 'GONE', { uses: [{ id: 'thrown-away', massG: 1 }] }),
    vialOf('v-good', 'GOOD', { from: ['b-food'], uses: [{ id: 'b-food', massG: 0.08 }] }),
  ]),
);

/** A run from what was typed and how many drops fell. */
function runOf(typed: Record<string, string>, drops: Record<string, number> = {}): RunState {
  const happened = [
    ...Object.entries(typed).map(([key, text]) => ({ type: 'typed' as const, key, text })),
    ...Object.entries(drops).flatMap(([key, n]) => Array.from({ length: n }, () => ({ type: 'drop' as const, key }))),
  ];
  return fold(happened.map((one, seq): RunEvent => ({ run: 'r', seq, at: envelope.made, ...one })));
}

/** 12 drops of 22 mg of a 1.0 % w/w vial, into a drink on the scale. */
const example = {
  vial: 'v-card',
  dropper: 'd22',
  base: 'new',
  'base.name': 'plain water',
  'base.by': 'mass',
  'base.g': (100 - 12 * 0.022).toFixed(4),
  'base.slack': '0',
};
const stepOf = (run: RunState, key: string) => dose.steps(run).find((step) => step.key === key)!;
const keys = (run: RunState) => dose.steps(run).map(({ key }) => key);
const tastingOf = (run: RunState) =>
  dose.keep(run)[0] as Extract<ReturnType<typeof dose.keep>[number], { doses: unknown }>;

describe('drops in a drink', () => {
  test('12 drops of 22 mg of a 1.0 % dilution in 100 g of drink are 26.4 mg/kg (worked example, n m w / M)', () => {
    const row = worked('d7');
    const step = stepOf(runOf(example, { drops: 12 }), 'drops');
    expect(step.results![0]!.unit).toBe(row.unit);
    expect(step.results![0]!.amount.value).toBeCloseTo(row.value, 9);
  });

  test('dropped into 100 g that are there already it is 0.26 % less: the dose weighs too', () => {
    const run = runOf({ ...example, 'base.g': '100' }, { drops: 12 });
    expect(stepOf(run, 'drops').results![0]!.amount.value).toBeCloseTo(26.4 / 1.00264, 9);
  });

  test.each([
    ['d5', '11', '0'],
    ['d6', '0', '40'],
  ])('%s: mg/kg become mg/L by the density of the drink, from its °Brix and % ABV', (id, brix, abv) => {
    const typed = { ...example, 'base.brix': brix, 'base.abv': abv, 'base.g': '10000' };
    const [perKg, perL] = stepOf(runOf(typed, { drops: 1 }), 'drops').results!;
    expect((50 * perL!.amount.value) / perKg!.amount.value).toBeCloseTo(worked(id).value, 1);
  });

  test('a density that was measured goes before the computed one, and is kept with the drink', () => {
    const run = runOf({ ...example, 'base.density': '1,052', 'base.g': '10000' }, { drops: 1 });
    const [perKg, perL] = stepOf(run, 'drops').results!;
    expect(perL!.amount.value / perKg!.amount.value).toBeCloseTo(1.052, 4);
    expect(tastingOf(run).base.densityGPerMl).toBe(1.052);
    const volume = runOf({ ...example, 'base.density': '1,052', 'base.by': 'volume', 'base.ml': '1000' }, { drops: 1 });
    expect(tastingOf(volume).base.volumeMl).toBeCloseTo(1000, 9);
  });

  test.each([
    ['d1', 0.02, 1],
    ['d12', 0.02, 0.5],
  ])('%s: a concentrate weighed into a litre gives c = 1000 w D mg/L (definition)', (id, strength, grams) => {
    takeIn([vialOf('v-conc', 'CONC', { contents: [{ material: 'm', name: 'vanillin', strength: sure(strength) }] })]);
    const typed = { ...example, vial: 'v-conc', dropper: 'scale', massG: String(grams), readability: '0.0001' };
    const run = runOf({ ...typed, 'base.by': 'volume', 'base.ml': String(1000 - grams / 0.808) });
    const row = worked(id);
    const expected = id === 'd1' ? 20 : row.value; // d1 asks the other way round: 20 mg/L need a 2.0 % concentrate
    expect(stepOf(run, 'drops').results![1]!.amount.value).toBeCloseTo(expected, 6);
    expect(keys(run)).not.toContain('aim');
  });

  test('the drop that nobody weighed is honest: its ± is more than a third of the number', () => {
    const [perKg] = stepOf(runOf({ ...example, dropper: 'typical' }, { drops: 4 }), 'drops').results!;
    expect(expanded(perKg!.amount) / perKg!.amount.value).toBeGreaterThan(0.33);
    expect(JSON.stringify(perKg!.how.inputs)).toContain('typical, not weighed');
  });

  test('minus takes one drop back, and never below none', () => {
    const events = (['drop', 'undo', 'undo', 'drop'] as const).map((type, seq): RunEvent => ({
      run: 'r',
      seq,
      at: envelope.made,
      type,
      key: 'drops',
    }));
    const run = fold(events, runOf(example));
    expect(run.drops['drops']).toBe(1);
    expect(stepOf(run, 'drops').results![0]!.amount.value).toBeCloseTo((0.022 * 1e4) / (100 - 11 * 0.022), 9);
  });

  test('a target becomes whole drops, with the error said', () => {
    const run = runOf({ ...example, 'base.g': '100', aim: '10' });
    expect(stepOf(run, 'aim').more!.join(' ')).toBe('‹5 drops›: ‹11 mg/kg›, 9.9 % over.'); // 4.55 drops would do it
    const few = stepOf(runOf({ ...example, aim: '2' }), 'aim').more!.join(' ');
    expect(few).toContain('‹1 drop›');
    expect(few).toContain('A weaker vial would come nearer.');
    expect(stepOf(runOf({ ...example, aim: '20000' }), 'aim').problem).toContain('cannot be made from it');
  });

  test('the solvent brings alcohol: 0.264 g of a 1 % vial in ethanol 96 % bring 0.311 mL of ethanol', () => {
    const tasting = tastingOf(runOf(example, { drops: 12 }));
    const ethanolMl = (0.264 * 0.99 * 0.93838) / 0.78924; // OIML R 22: 96 % vol is 0.93838 g/g, ethanol 0.78924 g/mL
    expect(ethanolMl).toBeCloseTo(0.3107, 3);
    expect(tasting.abv!.value).toBeCloseTo((100 * ethanolMl) / (99.736 / 0.9982 + 0.264 / 0.808), 3);
  });

  test('several vials add up in one glass, and one vial used twice counts as one material', () => {
    const more = { 'more.1': 'yes', 'vial.2': 'v-pgf', 'more.2': 'yes', 'vial.3': 'v-card' };
    const run = runOf({ ...example, ...more }, { drops: 4, 'drops.2': 5, 'drops.3': 8 });
    const tasting = tastingOf(run);
    const mass = 100 - 12 * 0.022 + 17 * 0.022;
    expect(tasting.reached.map(({ name }) => name)).toEqual(['CARD oil', 'PGF oil']);
    expect(tasting.reached[0]!.mgPerKg.value).toBeCloseTo((12 * 0.022 * 0.01 * 1e6) / mass, 9);
    expect(tasting.reached[1]!.mgPerKg.value).toBeCloseTo((5 * 0.022 * 0.002 * 1e6) / mass, 9);
    expect(tasting.uses.map(({ id }) => id)).toEqual(['v-card', 'v-pgf', 'v-card']);
    expect(tasting.uses[1]!.massG).toBeCloseTo(0.11, 12);
    expect(stepOf(run, 'drops.3').results![0]!.amount.value).toBeCloseTo(tasting.reached[0]!.mgPerKg.value, 9);
  });

  test('the verdict is kept with words and liking, and the drink can be used again', () => {
    const run = runOf({ ...example, verdict: 'bright, a little thin', liking: '7' }, { drops: 3 });
    const [tasting, base] = dose.keep(run);
    expect(tasting).toMatchObject({ kind: 'tasting', verdict: 'bright, a little thin', liking: 7 });
    expect(base).toMatchObject({ kind: 'base', name: 'plain water', brix: 0, abv: 0 });
    expect(tasting!.from).toContain(base!.id);
    takeIn([base!]);
    const again = runOf({ ...example, base: base!.id, 'base.by': 'volume' }, { drops: 3 });
    expect(keys(again)).not.toContain('new-base');
    takeIn([{ ...base!, volumeMl: 250.00000000000003 } as typeof base & object]); // as the first version stored it
    expect(stepOf(again, 'amount').ask![0]!.preset).toBe('250');
    takeIn([base!]);
    expect(dose.keep(again)).toHaveLength(1);
  });
});

describe('smell only stays out', () => {
  test.each([
    ['v-hex', 'HEX 1 % w/w was diluted with isopropanol 99 %: smell only, it never goes into a drink.'],
    [
      'v-thin',
      'THIN 1 % w/w was made with HEX 1 % w/w, and HEX 1 % w/w was diluted with isopropanol 99 %: smell only,',
    ],
    [
      'v-low',
      'LOW 1 % w/w was made with THIN 1 % w/w, and THIN 1 % w/w was made with HEX 1 % w/w, and HEX 1 % w/w was diluted with isopropanol 99 %: smell',
    ],
    ['v-bottle', 'BOT 1 % w/w comes from a bottle that is not fit for drinks: smell only'],
    ['v-gone', 'GONE 1 % w/w was made with something that is no longer on the Shelf: smell only'],
  ])('%s is refused with the reason, is still shown, and leads nowhere', (vial, reason) => {
    const steps = dose.steps(runOf({ ...example, vial }));
    expect(steps).toHaveLength(1);
    expect(steps[0]!.problem).toContain(reason);
    expect(steps[0]!.ask![0]!.options!.map(({ value }) => value)).toContain(vial);
    const dosed = runOf({ ...example, vial }, { drops: 3 });
    expect(dose.steps(dosed).map(({ key }) => key)).toEqual(['spoilt']);
    expect(() => dose.keep(dosed)).toThrow(reason);
  });

  test('a second vial is looked at as hard as the first', () => {
    const run = runOf({ ...example, 'more.1': 'yes', 'vial.2': 'v-low' }, { drops: 3, 'drops.2': 3 });
    expect(dose.steps({ ...run, drops: { drops: 3 } }).at(-1)!.key).toBe('vial.2');
    expect(dose.steps(run).at(-1)!.key).toBe('spoilt');
    expect(() => dose.keep(run)).toThrow('smell only');
  });

  test('a vial from a bottle fit for drinks, in food grade ethanol, is dosed', () => {
    expect(keys(runOf({ ...example, vial: 'v-good' }))).toContain('drops');
  });
});

describe('wrong input', () => {
  const problem = (name: string, text: string, key: string) => {
    const typed = { ...example, 'base.by': 'volume', [name]: text };
    const run = runOf(typed);
    return problemsOf(stepOf(run, key), run)[name];
  };

  test.each([
    ['base.ml', '0', 'amount', 'Volume of the drink: more than 0 mL, not 0 mL.'],
    ['base.ml', '', 'amount', 'still empty'],
    ['base.ml', '-5', 'amount', 'not −5 mL'],
    ['base.abv', '1000', 'new-base', 'Alcohol: at most 96 % ABV, not 1000 % ABV.'],
    ['base.brix', 'much', 'new-base', '“much” is not a number'],
    ['base.name', ' ', 'new-base', 'still empty'],
    ['aim', '0', 'aim', 'more than 0 mg/kg'],
    ['aim', '7 drops', 'aim', 'is not a number'],
  ])('%s “%s” gets one sentence', (...row) => {
    const [name, text, key, sentence] = row;
    expect(problem(name, text, key)).toContain(sentence);
  });

  test('“0,7” is a number', () => {
    expect(problem('base.abv', '0,7', 'new-base')).toBeUndefined();
  });

  test('no target is no problem: then one goes by taste', () => {
    expect(problem('aim', '', 'aim')).toBeUndefined();
  });

  test('sugar and alcohol that leave no room for water are told at the drink', () => {
    const run = runOf({ ...example, 'base.brix': '80', 'base.abv': '60' });
    expect(stepOf(run, 'new-base').problem).toContain('leave room for water');
    expect(() => dose.steps(run)).not.toThrow();
  });

  test('nothing is kept before the first drop', () => {
    expect(stepOf(runOf(example), 'drops').problem).toBe('No drop has fallen yet.');
    expect(() => dose.keep(runOf(example))).toThrow('Nothing has been dosed yet');
  });

  test('a run that was killed in the middle of the drops stands at the same drop again', () => {
    const run = { ...runOf(example, { drops: 2 }), at: 'drops' };
    const steps = dose.steps(run);
    expect(steps[placeOf(steps, run)]!.key).toBe('drops');
    expect(steps[placeOf(steps, run)]!.results![0]!.amount.value).toBeGreaterThan(0);
  });
});
