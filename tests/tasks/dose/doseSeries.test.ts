import { beforeEach, describe, expect, test } from 'vitest';
import type { RunEvent } from '../../../src/records/kind/run';
import { takeIn } from '../../../src/records/shelf';
import { abvLines, abvWords } from '../../../src/tasks/dose/abvTerms';
import { levelsOf } from '../../../src/tasks/dose/levels';
import { glassOf } from '../../../src/tasks/dose/glass';
import { dose } from '../../../src/tasks/dose/task';
import { fold, type RunState } from '../../../src/tasks/engine/fold';

const sure = (value: number) => ({ value, sources: [] });
const envelope = { v: 1, made: '2025-01-01T08:00:00.000Z', from: [] as string[] };
const ethanol = {
  id: 'ethanol-96',
  name: 'ethanol 96 % vol',
  food: true,
  dryOff: 'minutes',
  density: { gPerMl: 0.80742, atC: 20, source: 'OIML R 22' },
};
const glycol = {
  id: 'propylene-glycol',
  name: 'propylene glycol',
  food: true,
  dryOff: 'stays wet',
  density: { gPerMl: 1.0361, atC: 20, source: 'CRC' },
};

function vialOf(code: string, contents: (readonly [string, number])[], solvent: object = ethanol) {
  return {
    ...envelope,
    id: `v-${code}`,
    kind: 'vial',
    code,
    name: code,
    solvent,
    sizeMl: 10,
    uses: [],
    contents: contents.map(([material, strength]) => ({ material, name: material, strength: sure(strength) })),
    label: { value: 1, basis: '% w/w' },
    massG: sure(8),
    densityGPerMl: 0.808,
    grade: 'fit for drinks',
    madeOn: '2025-01-01',
    useBy: '2026-01-01',
    supplier: '',
    lot: '',
  };
}

const dropper = { ...envelope, id: 'd20', kind: 'dropper', name: 'Pipette 20', tip: '' };
const calibration = (liquid: string) => ({
  ...envelope,
  id: `c-${liquid}`,
  kind: 'calibration',
  dropper: 'd20',
  liquid: { id: liquid, name: liquid },
  readings: [{ drops: 20, massG: 0.4 }],
  readabilityG: 0.001,
  mgPerDrop: sure(20),
  spread: 0,
});
const material = (id: string, cas: string) => ({
  ...envelope,
  id,
  kind: 'material',
  name: id,
  code: 'XX',
  cas,
  sort: 'natural',
  form: 'liquid',
  cautions: [],
});

beforeEach(() =>
  takeIn([
    dropper,
    ...['ethanol-96', 'propylene-glycol'].map(calibration),
    material('nutmeg oil', '8008-45-5'),
    vialOf('NUT', [['nutmeg oil', 0.01]]),
    vialOf('PGV', [['vanilla', 0.01]], glycol),
    vialOf('MIX', [
      ['nutmeg oil', 0.006],
      ['rhubarb', 0.003],
    ]),
  ]),
);

const typed = {
  vial: 'v-NUT',
  dropper: 'd20',
  base: 'new',
  'base.name': 'soda',
  'base.by': 'mass',
  'base.g': '100',
  'base.slack': '0',
  mode: 'ladder',
  lowest: '4',
  glasses: '4',
  factor: '2',
  blind: 'no',
  blank: 'no',
};

function runOf(more: Record<string, string> = {}, drops: Record<string, number> = {}): RunState {
  const happened = [
    ...Object.entries({ ...typed, ...more }).map(([key, text]) => ({ type: 'typed' as const, key, text })),
    ...Object.entries(drops).map(([key, by]) => ({ type: 'count' as const, key, by })),
  ];
  return fold(happened.map((one, seq): RunEvent => ({ run: 'r', seq, at: envelope.made, ...one })));
}
const keys = (run: RunState) => dose.steps(run).map(({ key }) => key);
const stepOf = (run: RunState, key: string) => dose.steps(run).find((step) => step.key === key)!;
const four = { 'rung.1': 2, 'rung.2': 4, 'rung.3': 8, 'rung.4': 16 };

describe('a series of glasses', () => {
  test('4, 8, 16 and 32 mg/kg from 20 mg drops of a 1 % vial in 100 g: 2, 4, 8 and 16 drops, the errors said', () => {
    const { card, told } = stepOf(runOf(), 'ladder');
    expect(card!.answer!.big).toBe('2, 4, 8, 16 drops');
    expect(told![3]).toEqual(['Glass 4', '16 drops for 32 mg/kg: 32 mg/kg, 0.3 % under']); // 16 drops weigh 0.32 g themselves
    const pads = dose.steps(runOf()).flatMap((step) => (step.pad ? [step.pad.target] : []));
    expect(pads).toEqual([2, 4, 8, 16]);
  });

  test.each([
    [{ factor: '3', glasses: '3' }, ['2', '6', '18']],
    [{ factor: 'own', ownFactor: '1,5', glasses: '3' }, ['2', '3', '5']], // for 9 mg/kg: 5 drops give 9.99, 4 give 7.99
  ])('%j climbs by its own factor', (more, drops) => {
    expect(stepOf(runOf(more), 'ladder').card!.answer!.big).toBe(`${drops.join(', ')} drops`);
  });

  test('two glasses that would be the same are refused', () => {
    const step = stepOf(runOf({ lowest: '0.5' }), 'ladder');
    expect(step.problem).toContain('Two glasses would get the same number of drops');
    expect(step.card!.slots!['lowest']!.wrong).toBe(step.problem);
    expect(keys(runOf({ lowest: '0.5' }))).toEqual(['ladder']);
  });

  test('blind: nothing is poured before the codes are drawn, tasting goes by code, and no level is shown before the end', () => {
    expect(keys(runOf({ blind: 'yes' })).at(-1)).toBe('codes');
    const run = runOf({ blind: 'yes', codes: '725 236 871 105 333 444 555 666' }, four);
    expect(keys(run).filter((key) => key.startsWith('taste'))).toEqual(['taste.4', 'taste.2', 'taste.1', 'taste.3']);
    const tasting = dose.steps(run).filter(({ key }) => key.startsWith('taste') || key === 'best');
    expect(JSON.stringify(tasting)).not.toContain('mg/kg');
    expect(stepOf(run, 'best').ask![0]!.options!.map(({ value }) => value)).toEqual([
      '105',
      '236',
      '725',
      '871',
      'none',
    ]);
    expect(stepOf(run, 'reveal').results!.map(({ label }) => label.slice(0, 9))).toEqual([
      'Glass 725',
      'Glass 236',
      'Glass 871',
      'Glass 105',
    ]);
  });

  test('a blank is poured and tasted with the others: the drink alone, or the solvent where so much of it could be tasted', () => {
    const weak = runOf({ blank: 'yes', lowest: '0.5', glasses: '2', 'base.g': '1000' }, { 'rung.1': 3, 'rung.2': 5 });
    expect(stepOf(weak, 'ladder').card!.answer!.lines[1]).toBe('The blank: the drink alone.'); // 0.1 g in 1 kg
    expect(keys(weak)).toEqual(['ladder', 'rung.1', 'rung.2', 'taste.0', 'taste.1', 'taste.2', 'best', 'reveal']);
    const run = runOf({ blank: 'yes', 'liking.0': '5', 'note.0': 'flat' }, { ...four, blank: 16 });
    expect(stepOf(run, 'blank').say).toBe('‹16 drops› of ethanol 96 % vol into glass ‹0›.'); // 0.3 g in 100 g
    expect(stepOf(run, 'blank').more!.join()).toContain('from a bottle that is food grade');
    expect(dose.keep(run).map(({ kind }) => kind)).toEqual(['tasting', 'tasting', 'tasting', 'tasting', 'base']);
    expect(dose.keep(run)[2]).toMatchObject({
      glass: { code: '3', blank: { code: '0', solvent: 'ethanol 96 % vol', drops: 16, liking: 5, verdict: 'flat' } },
    });
  });

  test('blind, the blank has a code like the others, and can be the best', () => {
    const codes = '725 236 871 105 333 444 555 666 777';
    const run = runOf({ blind: 'yes', blank: 'yes', codes, best: '333' }, { ...four, blank: 16 });
    expect(keys(run).filter((key) => key.startsWith('taste'))).toEqual([
      'taste.4',
      'taste.2',
      'taste.0',
      'taste.1',
      'taste.3',
    ]);
    expect(stepOf(run, 'reveal').say).toBe('Glass ‹333› was the best: it was the blank.');
    const tastings = dose.keep(run).filter(({ kind }) => kind === 'tasting') as { glass: { best: boolean } }[];
    expect(tastings.map(({ glass }) => glass.best)).toEqual([false, false, false, false]);
  });

  test('a series that the first version began has no blank, and goes on where it was', () => {
    const { blank: _, ...first } = typed;
    const events = Object.entries(first).map(([key, text]) => ({ type: 'typed' as const, key, text }));
    const left = { type: 'go' as const, key: 'rung.2', text: 'ladder' };
    const all = [...events, left, { type: 'count' as const, key: 'rung.1', by: 2 }];
    const run = fold(all.map((one, seq): RunEvent => ({ run: 'r', seq, at: envelope.made, ...one })));
    expect(keys(run)).not.toContain('blank');
    expect(keys(run)).not.toContain('taste.0');
    expect(run.at).toBe('rung.2');
    expect(keys(run)).toContain('rung.2');
    expect(keys({ ...run, at: 'blind' })).toEqual(['ladder']); // that was asked on a screen of its own
  });

  test('every glass is kept as it was really dosed, the best one first', () => {
    const run = runOf({ best: '3', 'liking.3': '8', 'note.3': 'round', 'liking.1': '4' }, { ...four, 'rung.3': 9 });
    const kept = dose.keep(run);
    expect(kept.map(({ kind }) => kind)).toEqual(['tasting', 'tasting', 'tasting', 'tasting', 'base']);
    expect(kept[0]).toMatchObject({ liking: 8, verdict: 'round', glass: { code: '3', best: true, blind: false } });
    const first = kept[0] as { reached: { mgPerKg: { value: number } }[]; uses: { massG: number }[] };
    expect(first.reached[0]!.mgPerKg.value).toBeCloseTo((0.18 * 0.01 * 1e6) / 100.18, 9); // nine drops fell, not eight
    expect(first.uses[0]!.massG).toBeCloseTo(0.18, 12);
  });

  test('a glass without a drop cannot be left, and an untouched ladder is not kept', () => {
    expect(stepOf(runOf(), 'rung.1').problem).toBe('No drop is counted yet.');
    expect(() => dose.keep(runOf())).toThrow('Nothing has been dosed yet');
  });

  test('the rules are read before anything is tasted, for the strongest glass', () => {
    const run = runOf({ lowest: '8' }, { 'rung.1': 4, 'rung.2': 8, 'rung.3': 16, 'rung.4': 32 });
    expect(keys(run).indexOf('limits')).toBeLessThan(keys(run).indexOf('taste.1'));
    expect(stepOf(run, 'limits').say).toBe('The strongest glass is ‹over the limit›.'); // 64 mg/kg of nutmeg oil: safrole
  });
});

describe('one glass and the rules', () => {
  const one = (more: Record<string, string>, drops: number) => runOf({ mode: 'one', ...more }, { drops });

  test('a blend is told material by material', () => {
    const results = stepOf(one({ vial: 'v-MIX' }, 10), 'glass.1').results!;
    expect(results.map(({ label }) => label)).toEqual([
      'MIX',
      'by volume',
      'nutmeg oil',
      'rhubarb',
      'Alcohol of the whole',
    ]);
    expect(results[2]!.amount.value).toBeCloseTo((0.2 * 0.006 * 1e6) / 100.2, 9);
  });

  test('12 drops in ethanol exceed 0.05 % ABV and are under 0.5 %; a carrier without alcohol is under both', () => {
    const glass = (vial: string) => glassOf(one({ vial }, 12), 1)!;
    const lines = (vial: string) => abvLines(glass(vial));
    expect(lines('v-NUT')[0]).toMatch(/^0.05 % ABV: exceeded/); // 0.24 g of 96 % ethanol in 100 g: 0.28 %
    expect(lines('v-NUT')[1]).toMatch(/^0.5 % ABV: met/);
    expect(lines('v-PGV')).toEqual([expect.stringContaining(': met'), expect.stringContaining(': met')]);
    expect([abvWords(glass('v-NUT')), abvWords(glass('v-PGV'))]).toEqual(['under 0.5 %', 'still alcohol-free']);
  });

  test('a drink with alcohol of its own is not asked for 0.5 %', () => {
    const glass = glassOf(one({ 'base.abv': '12' }, 12), 1)!;
    expect([abvLines(glass), abvWords(glass)]).toEqual([[], '']);
  });

  test('the ceiling of the bar is what the safrole of nutmeg oil allows, and it stands before the first drop', () => {
    for (const drops of [0, 3, 30]) {
      const run = one({}, drops);
      const { limit } = levelsOf(run, glassOf(run, 1)!, 1);
      expect(limit!.of).toBe('safrole');
      expect(limit!.mgPerKg).toBeCloseTo(1 / 0.028, 1);
      expect(limit!.sure).toBe(false); // read in a proposal only
    }
  });

  test('what another vial brought already narrows the ceiling of this one', () => {
    const run = runOf({ mode: 'one', 'more.1': 'yes', 'vial.2': 'v-MIX' }, { drops: 10, 'drops.2': 1 });
    const { limit } = levelsOf(run, glassOf(run, 2)!, 2);
    const alone = levelsOf(one({ vial: 'v-MIX' }, 1), glassOf(one({ vial: 'v-MIX' }, 1), 1)!, 1).limit!;
    const nutmegNow = (0.2 * 0.01 * 1e6) / 100.22; // mg/kg from the first vial
    const room = 1 / 0.028 - nutmegNow; // of nutmeg oil
    expect(limit!.mgPerKg).toBeCloseTo(nutmegNow + room * 1.5, 1); // the blend brings half as much rhubarb along
    expect(alone.mgPerKg).toBeCloseTo((1 / 0.028) * 1.5, 1);
  });

  test('the range that was liked before comes from one’s own tastings of that material', () => {
    const tasting = (id: string, mgPerKg: number, liking: number) => ({
      ...envelope,
      id,
      kind: 'tasting',
      doses: [],
      verdict: '',
      liking,
      uses: [],
      base: { name: 'soda', volumeMl: 100, brix: 0, abv: 0, densityGPerMl: 1 },
      reached: [{ material: 'nutmeg oil', name: 'nutmeg oil', mgPerKg: sure(mgPerKg) }],
    });
    takeIn([tasting('t1', 6, 7), tasting('t2', 11, 8), tasting('t3', 30, 2)]);
    const run = one({}, 3);
    expect(levelsOf(run, glassOf(run, 1)!, 1).liked).toEqual({ low: 6, high: 11 });
    const mix = one({ vial: 'v-MIX' }, 3);
    expect(levelsOf(mix, glassOf(mix, 1)!, 1).liked).toBeNull(); // rhubarb was in none of them
  });
});
