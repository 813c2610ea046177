import { beforeEach, describe, expect, test } from 'vitest';
import { expanded } from '../../../src/core/number/measured';
import type { RunEvent } from '../../../src/records/kind/run';
import { shelf, takeIn } from '../../../src/records/shelf';
import { dose } from '../../../src/tasks/dose/task';
import { fold, type RunState } from '../../../src/tasks/engine/fold';
import { slotsOf } from '../../../src/tasks/engine/card';
import { dropped, problemsOf } from '../../../src/tasks/engine/leaving';
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
const asks = (run: RunState) => stepOf(run, 'glass.1').ask!.map(({ name }) => name);
const cardOf = (run: RunState) => stepOf(run, 'glass.1').card!;
const tastingOf = (run: RunState) =>
  dose.keep(run)[0] as Extract<ReturnType<typeof dose.keep>[number], { doses: unknown }>;

describe('drops in a drink', () => {
  test('12 drops of 22 mg of a 1.0 % dilution in 100 g of drink are 26.4 mg/kg (worked example, n m w / M)', () => {
    const row = worked('d7');
    const step = stepOf(runOf(example, { drops: 12 }), 'glass.1');
    expect(step.results![0]!.unit).toBe(row.unit);
    expect(step.results![0]!.amount.value).toBeCloseTo(row.value, 9);
  });

  test('dropped into 100 g that are there already it is 0.26 % less: the dose weighs too', () => {
    const run = runOf({ ...example, 'base.g': '100' }, { drops: 12 });
    expect(stepOf(run, 'glass.1').results![0]!.amount.value).toBeCloseTo(26.4 / 1.00264, 9);
  });

  test.each([
    ['d5', '11', '0'],
    ['d6', '0', '40'],
  ])('%s: mg/kg become mg/L by the density of the drink, from its °Brix and % ABV', (id, brix, abv) => {
    const typed = { ...example, 'base.brix': brix, 'base.abv': abv, 'base.g': '10000' };
    const [perKg, perL] = stepOf(runOf(typed, { drops: 1 }), 'glass.1').results!;
    expect((50 * perL!.amount.value) / perKg!.amount.value).toBeCloseTo(worked(id).value, 1);
  });

  test('a density that was measured goes before the computed one, and is kept with the drink', () => {
    const run = runOf({ ...example, 'base.density': '1,052', 'base.g': '10000' }, { drops: 1 });
    const [perKg, perL] = stepOf(run, 'glass.1').results!;
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
    expect(stepOf(run, 'glass.1').results![1]!.amount.value).toBeCloseTo(expected, 6);
    expect(asks(run)).not.toContain('aim');
  });

  test('the drop that nobody weighed is honest: its ± is more than a third of the number', () => {
    const [perKg] = stepOf(runOf({ ...example, dropper: 'typical' }, { drops: 4 }), 'glass.1').results!;
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
    expect(stepOf(run, 'glass.1').results![0]!.amount.value).toBeCloseTo((0.022 * 1e4) / (100 - 11 * 0.022), 9);
  });

  test('a target becomes whole drops, with the error said', () => {
    const run = runOf({ ...example, 'base.g': '100', aim: '10' });
    expect(stepOf(run, 'glass.1').counting!.target).toBe(5); // 4.55 drops would do it
    expect(cardOf(run).answer!.lines).toEqual(['mg/kg now, 5 to go', '5 drops give 11 mg/kg, 9.9 % over']);
    const few = runOf({ ...example, aim: '2' });
    expect(stepOf(few, 'glass.1').counting!.target).toBe(1);
    expect(cardOf(few).advice!.words).toContain('a weaker vial would come nearer');
    expect(cardOf(runOf({ ...example, aim: '20000' })).slots!['aim']!.wrong).toContain('cannot be made from it');
  });

  test('drops become a target: 12 drops that are asked for are counted to, and what they come to is said', () => {
    const run = runOf({ ...example, 'base.g': '100', aim: '12', 'aim.in': 'drops' });
    expect(stepOf(run, 'glass.1').counting!.target).toBe(12);
    expect(cardOf(run).answer!.lines[1]).toBe('12 drops give 26 mg/kg');
    expect(dose.done!(run, []).plan!.lines).toMatchObject([{ id: 'v-card', drops: 12 }]);
    const half = runOf({ ...example, aim: '1,5', 'aim.in': 'drops' });
    expect(problemsOf(stepOf(half, 'glass.1'), half)['aim']).toContain('whole drops only');
  });

  test('what the drops leave to do is said with each of them', () => {
    const lines = [1, 5, 7].map((drops) => cardOf(runOf({ ...example, aim: '11' }, { drops })).answer!.lines[0]);
    expect(lines).toEqual([
      expect.stringContaining('with 1 drop, 4 to go'),
      expect.stringContaining('with 5 drops, as planned'),
      expect.stringContaining('with 7 drops, 2 too many'),
    ]);
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
    expect(stepOf(run, 'glass.3').results![0]!.amount.value).toBeCloseTo(tasting.reached[0]!.mgPerKg.value, 9);
  });

  test('the verdict is kept with words and liking, and the drink can be used again', () => {
    const run = runOf({ ...example, verdict: 'bright, a little thin', liking: '7' }, { drops: 3 });
    const [tasting, base] = dose.keep(run);
    expect(tasting).toMatchObject({ kind: 'tasting', verdict: 'bright, a little thin', liking: 7 });
    expect(base).toMatchObject({ kind: 'base', name: 'plain water', brix: 0, abv: 0 });
    expect(tasting!.from).toContain(base!.id);
    takeIn([base!]);
    const again = runOf({ ...example, base: base!.id, 'base.by': 'volume' }, { drops: 3 });
    expect(asks(again)).not.toContain('base.name');
    takeIn([{ ...base!, volumeMl: 250.00000000000003 } as typeof base & object]); // as the first version stored it
    expect(stepOf(again, 'glass.1').ask!.find(({ name }) => name === 'base.ml')!.preset).toBe('250');
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
    const second = dose.steps({ ...run, drops: { drops: 3 } }).at(-1)!;
    expect([second.key, second.problem]).toEqual(['glass.2', expect.stringContaining('smell only')]);
    expect(second.counting).toBeUndefined();
    expect(dose.steps(run).at(-1)!.key).toBe('spoilt');
    expect(() => dose.keep(run)).toThrow('smell only');
  });

  test('a vial from a bottle fit for drinks, in food grade ethanol, is dosed', () => {
    expect(stepOf(runOf({ ...example, vial: 'v-good' }), 'glass.1').counting).toBeDefined();
  });
});

describe('wrong input', () => {
  /** What the card says of an answer: the sentence under its slot, or that the slot is empty. */
  const told = (name: string, text: string) => {
    const run = runOf({ ...example, 'base.by': 'volume', [name]: text });
    const slots = slotsOf(run, stepOf(run, 'glass.1'));
    const slot = slots.find(({ field, beside = [] }) => [field, ...beside].some((one) => one.name === name))!;
    return slot.state === 'empty' ? 'empty' : slot.wrong;
  };

  test.each([
    ['base.ml', '0', 'Volume of the drink: more than 0 mL, not 0 mL.'],
    ['base.ml', '', 'empty'],
    ['base.ml', '-5', 'not −5 mL'],
    ['base.abv', '1000', 'Alcohol: at most 96 % ABV, not 1000 % ABV.'],
    ['base.brix', 'much', '“much” is not a number'],
    ['base.slack', '80', 'at most 50 %'],
    ['base.name', ' ', 'empty'],
    ['aim', '0', 'more than 0 mg/kg'],
    ['aim', '7 drops', 'is not a number'],
  ])('%s “%s” gets one sentence', (...row) => {
    const [name, text, sentence] = row;
    expect(told(name, text)).toContain(sentence);
    expect(stepOf(runOf({ ...example, 'base.by': 'volume', [name]: text }), 'glass.1').problem).toBeDefined();
  });

  test('“0,7” is a number', () => {
    expect(told('base.abv', '0,7')).toBeUndefined();
  });

  test('no target is no problem: then one goes by taste', () => {
    expect(told('aim', '')).toBeUndefined();
    expect(cardOf(runOf({ ...example, aim: '' })).slots!['aim']!.shows).toBe('by taste');
  });

  test('sugar and alcohol that leave no room for water are told at the drink', () => {
    const run = runOf({ ...example, 'base.brix': '80', 'base.abv': '60' });
    expect(slotsOf(run, stepOf(run, 'glass.1')).find(({ field }) => field.name === 'base.name')!.wrong).toContain(
      'leave room for water',
    );
    expect(() => dose.steps(run)).not.toThrow();
  });

  test('nothing is kept before the first drop', () => {
    expect(stepOf(runOf(example), 'glass.1').problem).toBe('No drop is counted yet.');
    expect(() => dose.keep(runOf(example))).toThrow('Nothing has been dosed yet');
  });

  test('a run that was killed in the middle of the drops stands at the same drop again', () => {
    for (const at of ['glass.1', 'drops']) {
      const run = { ...runOf(example, { drops: 2 }), at }; // 'drops' is the screen of the first version
      const steps = dose.steps(run);
      const step = steps[placeOf(steps, run)]!;
      expect([step.key, step.counting!.counter]).toEqual(['glass.1', 'drops']);
      expect(step.results![0]!.amount.value).toBeGreaterThan(0);
    }
    const second = {
      ...runOf({ ...example, 'more.1': 'yes', 'vial.2': 'v-pgf' }, { drops: 2, 'drops.2': 1 }),
      at: 'drops.2',
    };
    const left = { ...second, done: { 'glass.1': envelope.made } };
    expect(dose.steps(left)[placeOf(dose.steps(left), left)]!.key).toBe('glass.2');
  });

  test('what the card was filled with stays so from the first drop on, whatever comes to the Shelf', () => {
    const { vial: _, dropper: __, ...drink } = example;
    takeIn([vialOf('v-fresh', 'FRE', { useBy: '2099-01-01' })]);
    const run = runOf(drink);
    const step = stepOf(run, 'glass.1');
    const [vial] = step.ask!;
    const events = dropped(step, run, 'drops').map((one, seq): RunEvent => ({
      run: 'r',
      seq,
      at: envelope.made,
      ...one,
    }));
    const then = fold(events, run);
    expect(vial!.preset).toBe('v-fresh'); // the others are past their date
    expect(then.presets['vial']).toBe(vial!.preset);
    takeIn([vialOf('v-newest', 'NEW', { made: '2026-01-01T08:00:00.000Z', useBy: '2099-01-01' })]);
    expect(stepOf(runOf(drink), 'glass.1').ask![0]!.preset).toBe('v-newest');
    expect(stepOf(then, 'glass.1').ask![0]!.preset).toBe(vial!.preset);
    expect(tastingOf(then).doses[0]).toMatchObject({ vial: vial!.preset, drops: 1 });
  });
});

test('no vial is dosed by itself that holds less than the level of last time takes', () => {
  const full = vialOf('full', 'PEAR', { useBy: '' });
  const nearly = vialOf('nearly', 'PEAR', {
    useBy: '',
    weighed: [{ at: '2025-02-01T08:00:00.000Z', left: sure(0.3) }],
  });
  const tasting = {
    ...envelope,
    id: 'last',
    kind: 'tasting',
    base: { name: 'tonic', volumeMl: 250, brix: 8, abv: 0, densityGPerMl: 1.03 },
    doses: [{ vial: 'nearly', code: 'PEAR', name: 'PEAR oil', drops: 20, massG: sure(0.3) }],
    reached: [],
    verdict: '',
    liking: null,
    uses: [],
  };
  const chosen = (aim: string) => {
    shelf.records.value = new Map();
    takeIn([full, nearly, { ...tasting, done: { from: '', to: '', asked: { aim, 'aim.in': 'mg/kg' } } }] as never);
    const run = fold([]);
    return slotsOf(run, dose.steps(run)[0]!).find(({ field }) => field.name === 'vial')!.value;
  };
  expect(chosen('10')).toBe('nearly'); // 10 mg/kg of 250 g are 2.5 mg: 0.25 g of 1 %
  expect(chosen('20')).toBe('full'); // 0.5 g
  expect(chosen('12,5')).toBe('full'); // 0.31 g, typed with a comma
});
