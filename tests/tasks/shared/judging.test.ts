import { beforeEach, describe, expect, test } from 'vitest';
import { exact } from '../../../src/core/number/measured';
import type { RunEvent } from '../../../src/records/kind/run';
import { takeIn } from '../../../src/records/shelf';
import { fold } from '../../../src/tasks/engine/fold';
import { judge, traitKey } from '../../../src/tasks/shared/judgeRun';
import type { Part } from '../../../src/workshop/drinkable/judging';
import { levelWords, sourceWords, stateWords } from '../../../src/workshop/drinkable/limitRules';

const material = (id: string, cas: string, sort = 'substance') => ({
  id,
  kind: 'material',
  v: 1,
  made: '2025-01-01T08:00:00.000Z',
  from: [],
  name: id,
  code: 'XX',
  cas,
  sort,
  form: 'liquid',
  cautions: [],
});

beforeEach(() =>
  takeIn([
    material('nutmeg oil', '8008-45-5', 'natural'),
    material('vanillin', '121-33-5'),
    material('isoeugenol', '97-54-1'),
    material('maltol', '118-71-8'),
    material('citral', '5392-40-5'),
    material('linalool', '78-70-6'),
    material('safrole', '94-59-7'),
    material('pulegone', '89-82-7'),
    material('peppermint oil', '8006-90-4', 'natural'),
    material('house blend', ''),
  ]),
);

const run = (typed: Record<string, string> = {}) =>
  fold(
    Object.entries(typed).map(([key, text], seq): RunEvent => ({ run: 'r', seq, at: '', type: 'typed', key, text })),
  );
const part = (id: string, mgPerKg: number, more: Partial<Part> = {}): Part => ({
  id,
  name: id,
  mgPerKg: exact(mgPerKg),
  ...more,
});
const soda = { abv: 0, density: 1 };
const ask = (parts: Part[], typed: Record<string, string> = {}, drink = soda) => judge(run(typed), parts, drink)!;
const about = (parts: Part[], what: string, typed: Record<string, string> = {}, drink = soda) =>
  ask(parts, typed, drink).findings.find((finding) => finding.what.startsWith(what));

describe('what the rules say of a drink', () => {
  test('the checks come in their order: may it be added, limit, intake, concern', () => {
    const { findings } = ask([part('safrole', 2), part('nutmeg oil', 50), part('vanillin', 20), part('pulegone', 1)]);
    const order = ['added', 'limit', 'intake', 'concern'];
    const places = findings.map(({ check }) => order.indexOf(check));
    expect(places).toEqual([...places].sort((a, b) => a - b));
    expect(findings[0]!.state).toBe('prohibited'); // Reg. (EC) 1334/2008 Annex III A
  });

  test('nutmeg oil breaks the safrole limit through its highest published content of 2.8 % (Mallavarapu 1998): 36 mg/kg', () => {
    const judged = ask([part('nutmeg oil', 50)]);
    const [lowest] = judged.ceilings;
    expect(about([part('nutmeg oil', 50)], 'safrole')!.state).toBe('over');
    expect(lowest!.finding.what).toBe('safrole');
    expect(lowest!.binding).toBe('nutmeg oil');
    expect(lowest!.mgPerKg).toBeCloseTo(1 / 0.028, 9);
  });

  test('a certificate of 1 % safrole in the lot counts instead: 100 mg/kg', () => {
    const typed = { 'cert.nutmeg oil.94-59-7': '1,0' };
    const safrole = ask([part('nutmeg oil', 50)], typed).ceilings.find(({ finding }) => finding.what === 'safrole');
    expect(safrole!.mgPerKg).toBeCloseTo(100, 9);
    expect(about([part('nutmeg oil', 50)], 'safrole', typed)!.state).not.toBe('over');
  });

  test('a certificate on the bottle counts by itself, but only when every bottle behind the vial has one', () => {
    const bottle = (id: string, share: number | null) => ({
      id,
      kind: 'bottle' as const,
      v: 1,
      made: '',
      from: [],
      material: 'nutmeg oil',
      supplier: '',
      lot: id,
      grade: 'fit for drinks' as const,
      ...(share === null ? {} : { constituents: [{ cas: '94-59-7', name: 'safrole', share }] }),
    });
    const highest = (...bottles: ReturnType<typeof bottle>[]) =>
      ask([part('nutmeg oil', 50, { bottles })]).ceilings.find(({ finding }) => finding.what === 'safrole')!.mgPerKg;
    expect(highest(bottle('a', 0.01))).toBeCloseTo(100, 9);
    expect(highest(bottle('a', 0.01), bottle('b', 0.02))).toBeCloseTo(50, 9);
    expect(highest(bottle('a', 0.01), bottle('b', null))).toBeCloseTo(1 / 0.028, 9);
  });

  test.each([
    ['isoeugenol', 9],
    ['maltol', 120],
    ['vanillin', 1200],
    ['citral', 60],
  ])('%s at 60 kg and 500 g a day: its intake is reached at %d mg/kg (EFSA OpenFoodTox)', (id, mgPerKg) => {
    const intake = ask([part(id, 1)], { portion: '500' }).ceilings.find(({ finding }) => finding.check === 'intake');
    expect(intake!.mgPerKg).toBeCloseTo(mgPerKg, 9);
  });

  test('members of a group are added: citral and linalool share one intake of 0.5 mg/kg body weight', () => {
    const group = about([part('citral', 40), part('linalool', 40)], 'citral and its group', { portion: '500' });
    expect(group!.state).toBe('over'); // each alone would pass at 60 mg/kg
    expect(group!.amount.value).toBeCloseTo((80 * 0.5) / 60, 9);
  });

  test('portion and body weight are the person’s own', () => {
    const amountAt = (typed: Record<string, string>) => about([part('vanillin', 20)], 'vanillin', typed)!.amount.value;
    expect(amountAt({})).toBeCloseTo((20 * 0.3) / 60, 12);
    expect(amountAt({ portion: '1000', body: '50' })).toBeCloseTo(20 / 50, 12);
    expect(judge(run({ body: '0' }), [part('vanillin', 20)], soda)).toBeNull();
  });

  test('what was read only in a proposal is never green, however little is in it', () => {
    expect(about([part('nutmeg oil', 0.001)], 'safrole')!.state).toBe('check');
    for (const level of ['replaced', 'proposal', 'memory'] as const)
      expect(levelWords[level]).toContain('check the law');
    expect(stateWords.check.words).toBe('check the law');
  });

  test('EU and US speak of different things', () => {
    const bans = (jurisdiction: string) =>
      ask([part('pulegone', 1)], { jurisdiction }).findings.filter(({ check }) => check === 'added');
    expect(bans('EU')[0]!.figure!.source).toContain('1334/2008');
    expect(bans('US')[0]!.figure!.source).toContain('21 CFR');
  });

  test('a solvent that came along is judged too: propylene glycol is at most 1000 mg/L in the EU, from all sources', () => {
    const glycol = part('propylene-glycol', 900, { name: 'propylene glycol', carrier: true });
    const judged = ask([glycol, part('vanillin', 9)]);
    const row = judged.ceilings.find(({ finding }) => finding.what.startsWith('propane-1,2-diol (E 1520)'))!;
    expect(row.times).toBeCloseTo(1000 / 900, 9);
    expect(row.mgPerKg).toBeCloseTo(10, 9); // of the vanillin that it carries
    expect(ask([part('ethanol-96', 900), part('water', 900)]).findings).toEqual([]);
  });

  test('what another dose brought does not follow this one', () => {
    const fixed = part('citral', 40, { fixed: true });
    const ceiling = ask([fixed, part('linalool', 10)], { portion: '500' }).ceilings[0]!;
    expect(ceiling.mgPerKg).toBeCloseTo(20, 9);
    expect(ceiling.binding).toBe('linalool');
  });

  test('a material without a CAS number is named, since nothing can be looked up', () => {
    expect(ask([part('house blend', 10)]).silent).toEqual(['house blend']);
    expect(ask([part('house blend', 10)]).findings).toEqual([]);
  });

  test('what only a certificate tells of a material is counted too, without a CAS number or a plant', () => {
    const bottle = {
      id: 'b',
      kind: 'bottle' as const,
      v: 1,
      made: '',
      from: [],
      material: 'house blend',
      supplier: '',
    };
    const constituents = [{ cas: '94-59-7', name: 'safrole', share: 0.2 }];
    const bottles = [{ ...bottle, lot: '', grade: 'fit for drinks' as const, constituents }];
    expect(about([part('house blend', 10, { bottles })], 'safrole')).toMatchObject({ state: 'over', max: 1 });
    expect(ask([part('house blend', 10, { bottles })]).silent).toEqual([]);
  });

  test('an oil is counted by its Latin name alone: nutmeg brings its 2.8 % of safrole without any CAS number', () => {
    const own = { ...material('own oil', '', 'natural'), botanical: 'Myristica fragrans Houtt.' };
    takeIn([own]);
    expect(about([part('own oil', 50)], 'safrole')).toMatchObject({ state: 'over', max: 1 });
    expect(about([part('own oil', 50)], 'safrole')!.amount.value).toBeCloseTo(1.4, 9);
    expect(ask([part('own oil', 50)]).silent).toEqual([]);
  });

  test('a plant is banned by its Latin name, with a CAS number or without, however it is typed', () => {
    const plants = {
      herb: { ...material('herb', '', 'natural'), botanical: 'hypericum perforatum L.' },
      root: { ...material('root', '8015-79-0', 'natural'), botanical: 'Acorus calamus' },
      peel: { ...material('peel', '8008-56-8', 'natural'), botanical: 'Citrus limon' },
    };
    takeIn(Object.values(plants));
    const bans = (id: string, abv = 0) =>
      ask([part(id, 1)], {}, { abv, density: 1 }).findings.filter(({ check }) => check === 'added');
    expect(bans('herb')[0]).toMatchObject({
      state: 'prohibited',
      max: 0,
      figure: { source: expect.stringContaining('Annex IV') },
    });
    expect(bans('herb', 20)).toEqual([]); // for alcoholic drinks only
    expect(bans('root', 20)[0]!.state).toBe('prohibited');
    expect(bans('peel')).toEqual([]);
    expect(ask([part('herb', 1)]).silent).toEqual(['herb']); // its limits still cannot be looked up
    expect(ask([part('herb', 1)]).ceilings[0]).toMatchObject({ times: 0, binding: 'herb' });
  });

  test('the part of the plant decides where a ban means one: sassafras root is banned in the US, its leaf is not', () => {
    const sassafras = { ...material('sassafras', '', 'natural'), botanical: 'Sassafras albidum' };
    const banned = (part?: string) => {
      const own = { ...sassafras, ...(part === undefined ? {} : { part }) };
      takeIn([own]);
      const { findings } = ask([{ id: 'sassafras', name: 'sassafras', mgPerKg: exact(1) }], { jurisdiction: 'US' });
      return findings.some(({ check }) => check === 'added');
    };
    expect(['root bark', 'leaves', undefined].map(banned)).toEqual([true, false, true]); // not known may be any
  });

  test('where a figure hangs on the kind of drink, the kind is asked for', () => {
    const parts = [part('peppermint oil', 2000)];
    expect(ask(parts).traits).toContain('mint');
    expect(about(parts, 'pulegone', { [traitKey('mint')]: 'yes' })!.state).toBe('over');
    expect(ask([part('vanillin', 10)]).traits).toEqual([]);
    takeIn([material('quinine', '130-95-0')]); // carbonated in the US alone
    const traits = (jurisdiction: string) => ask([part('quinine', 10)], { jurisdiction }).traits;
    expect([traits('EU'), traits('US')]).toEqual([[], ['carbonated']]);
  });

  test('above 1.2 % ABV the rules of alcoholic drinks count', () => {
    const quinine = material('quinine', '130-95-0');
    takeIn([quinine]);
    const max = (abv: number) => about([part('quinine', 90)], 'quinine', {}, { abv, density: 1 })!.max;
    expect([max(0.4), max(8)]).toEqual([100, 250]);
  });
});

describe('what a drink is', () => {
  const mint = [part('peppermint oil', 100)]; // at most 4 % of pulegone (Ph. Eur., older edition)

  test('is preset by what is in it: peppermint oil makes it mint, and pulegone is judged without a tap', () => {
    const judged = ask(mint);
    expect(judged.has).toEqual(['mint']);
    expect(judged.because.get('mint')).toBe('peppermint oil');
    const pulegone = judged.findings.find(({ check, what }) => check === 'limit' && what === 'pulegone')!;
    expect(pulegone).toMatchObject({ max: 20, state: 'check' });
    expect(pulegone.amount.value).toBeCloseTo(4, 9);
  });

  test('but what someone says goes before it', () => {
    expect(ask(mint, { [traitKey('mint')]: 'no' }).has).toEqual([]);
    expect(ask([part('vanillin', 20)], { [traitKey('mint')]: 'yes' }).has).toEqual(['mint']);
    expect(ask([part('peppermint oil', 0)]).has).toEqual([]);
  });

  test.each([
    ['EU', 1.2, false],
    ['EU', 1.21, true],
    ['US', 0.49, false],
    ['US', 0.5, true],
  ])('under %s rules %d %% vol is alcoholic: %s', (jurisdiction, abv, alcoholic) => {
    const { findings } = ask(
      [part('propylene-glycol', 1), part('peppermint oil', 10)],
      { jurisdiction },
      { abv, density: 1 },
    );
    const max = findings.find(({ check, what }) => check === 'limit' && /pulegone|^propylene/.test(what))!.max;
    expect(max).toBe({ EU: alcoholic ? 100 : 20, US: alcoholic ? 50_000 : 20_000 }[jurisdiction]);
  });

  test('without alcohol a small child is counted too, with it only who drinks a lot', () => {
    const who = (abv: number) =>
      about([part('vanillin', 20)], 'vanillin', {}, { abv, density: 1 })!.others!.map(({ who, times }) => [who, times]);
    expect(who(0)).toEqual([
      ['small child', expect.closeTo((20 * 0.2) / 12 / 10, 12)],
      ['heavy drinker', expect.closeTo((20 * 1.5) / 60 / 10, 12)],
    ]);
    expect(who(5).map(([name]) => name)).toEqual(['heavy drinker']);
  });
});

describe('what stands beside the findings', () => {
  test('of the dose alone it is said of how much nothing is known; carrier and acid are no part of it', () => {
    const dosed = [part('nutmeg oil', 30), part('vanillin', 10)];
    const known = ask(dosed).counted.reduce((sum, { constituent }) => sum + constituent.share, 0);
    expect(ask(dosed).unknown).toBeCloseTo((30 * (1 - known)) / 40, 9);
    const beside = [part('propylene-glycol', 900, { carrier: true }), part('house blend', 5, { fixed: true })];
    expect(ask([...dosed, ...beside]).unknown).toBeCloseTo((30 * (1 - known)) / 40, 9);
    expect(ask([part('house blend', 5)])).toMatchObject({ unknown: 1, silent: ['house blend'], findings: [] });
  });

  test('a substance that two materials bring is added up by name', () => {
    const { shared } = ask([part('pulegone', 1), part('peppermint oil', 100), part('vanillin', 5)]);
    expect(shared.map(({ name, total }) => [name, Number(total.value.toFixed(9))])).toEqual([['pulegone', 5]]);
  });

  test('ceilings leave out the threshold of concern, and what carries nothing has none', () => {
    const { ceilings } = ask([part('nutmeg oil', 50), part('peppermint oil', 50)]);
    expect(ceilings.every(({ finding }) => finding.check !== 'concern')).toBe(true);
    expect(ask([part('propylene-glycol', 900, { carrier: true })]).ceilings).toEqual([]);
    expect(ask([part('citral', 9, { fixed: true })]).ceilings).toEqual([]);
  });

  test('benzyl alcohol as the carrier of a soft drink is answered: the text does not name such a drink', () => {
    const found = about([part('benzyl-alcohol', 50, { carrier: true })], 'benzyl alcohol (E 1519)')!;
    expect(found).toMatchObject({ state: 'check', max: null });
    const liqueur = { [traitKey('liqueur')]: 'yes' };
    const over = about([part('benzyl-alcohol', 150)], 'benzyl alcohol (E 1519)', liqueur, { abv: 20, density: 1 })!;
    expect(over).toMatchObject({ state: 'over', max: 100 });
  });

  test('triacetin and triethyl citrate share their 3000 mg/kg with propylene glycol', () => {
    const three = ['triacetin', 'triethyl-citrate', 'propylene-glycol'].map((id) => part(id, 1001, { carrier: true }));
    expect(about(three, 'propane-1,2-diol, triethyl citrate')!).toMatchObject({ state: 'over', max: 3000 });
  });

  test('what needs no number is left out of the threshold of concern', () => {
    const acid = part('citric-acid', 2000, { cas: '77-92-9', fixed: true });
    expect(ask([acid, part('maltol', 5)]).findings.some(({ what }) => what === 'citric-acid')).toBe(false);
  });
});

test('a source is named for what it is: law, or the opinion of an authority, read or second hand', () => {
  const figure = (level: 'primary' | 'memory') => ({ source: 'X', asOf: '2019', level });
  expect(sourceWords('limit', figure('primary'))).toBe('X, 2019 · law, read');
  expect(sourceWords('added', figure('memory'))).toBe('X, 2019 · law, not read: check the law');
  expect(sourceWords('intake', figure('primary'))).toBe('X, 2019 · opinion of an authority, read');
  expect(sourceWords('concern', { ...figure('memory'), asOf: '' })).toBe(
    'X · opinion of an authority, not read: check it',
  );
});

test('portion, body weight and content have their highest values', () => {
  const judged = (typed: Record<string, string>) => judge(run(typed), [part('nutmeg oil', 50)], soda);
  expect(judged({ portion: '10 000' })).not.toBeNull();
  expect(judged({ portion: '10 001' })).toBeNull();
  expect(judged({ body: '500' })).not.toBeNull();
  expect(judged({ body: '501' })).toBeNull();
  const safrole = (percent: string) =>
    judged({ 'cert.nutmeg oil.94-59-7': percent })!.findings.find(({ what }) => what === 'safrole')!.amount.value;
  expect(safrole('100')).toBeCloseTo(50, 9);
  expect(safrole('101')).toBeCloseTo(1.4, 9); // no content: the published one counts
});
