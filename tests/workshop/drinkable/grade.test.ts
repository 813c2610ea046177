import { beforeEach, describe, expect, test } from 'vitest';
import { exact } from '../../../src/core/number/measured';
import { describe as inWords } from '../../../src/app/describe/describe';
import { searchShelf } from '../../../src/app/describe/shelfIndex';
import { changed, editables } from '../../../src/app/edit/editable';
import { nextsOf } from '../../../src/app/record/nexts';
import { recordTable } from '../../../src/app/record/paper';
import { planMerge } from '../../../src/records/backup/merge';
import type { AnyRecord } from '../../../src/records/kind/kinds';
import type { Stored } from '../../../src/records/kind/record';
import type { Vial } from '../../../src/records/kind/vial';
import { newRecord, shelf, takeIn } from '../../../src/records/shelf';
import { count } from '../../../src/tasks/count/task';
import { dose } from '../../../src/tasks/dose/task';
import { costOf } from '../../../src/workshop/formulaBook';
import { decidedBy, gradeNow, gradeWord, isSmellOnly, labelSays, wasFit } from '../../../src/workshop/drinkable/grade';
import { isGraded, type Graded } from '../../../src/workshop/drinkable/gradeCause';
import { canBeMarked, marked, toRelabel, type Markable } from '../../../src/workshop/drinkable/mark';
import { solventsOnHand } from '../../../src/workshop/onHand';
import {
  MARK,
  NEVER,
  SMELL,
  bottle,
  change,
  dosing,
  drink,
  ethanol,
  fitShelf,
  grade,
  kept,
  label,
  ownSolvent,
  pack,
  put,
  runOf,
  shelve,
  smellOnly,
  there,
  vial,
  why,
} from './gradeShelf';

beforeEach(() => shelve(fitShelf()));

const emptyBatch = {
  name: 'Orchard, 20 L',
  madeOn: '2026-05-04',
  jurisdiction: 'EU',
  notes: '',
  uses: [],
  asked: {},
  formula: { id: 'f', name: 'Orchard', version: 1 },
  lines: [],
  reached: [],
  checks: [],
  weighed: [],
  drink: {
    litres: exact(20),
    brix: exact(10),
    abv: exact(0),
    densityGPerMl: exact(1.04),
    emulsion: false,
  },
};
const named = { name: 'Orchard 1', code: 'T7', size: '10' };

test('the word for lists is that of what is poured; a drink that is fit needs none', () => {
  put([newRecord('batch', { ...emptyBatch, id: 'batch' })]);
  const words = ['b-card', 'pack', 'v-card', 'drink', 'batch', 'card', 'f'].map((id) => gradeWord(there(id)));
  const fit = 'fit for drinks';
  expect(words).toEqual([fit, fit, fit, undefined, undefined, undefined, undefined]);
  change('drink', { doses: [], uses: [{ id: 'gone', massG: 1 }] });
  change('batch', MARK);
  expect(['drink', 'batch'].map((id) => gradeWord(there(id)))).toEqual(['smell only', 'smell only']);
  expect(labelSays(there<Graded>('batch'))).toBe('smell only');
});

test('all is fit for drinks while everything in it is', () => {
  const all = [...shelf.records.value.values()].filter(isGraded);
  expect(all.length).toBeGreaterThan(8);
  expect(all.map(gradeNow)).toEqual(all.map(() => ({ grade: 'fit for drinks', why: null })));
});

describe('a mark that comes afterwards', () => {
  test.each([
    ['40: on a bottle', 'b-card', ['b-card', 'v-card', 'v-low', 'v-lowest', 'trial', 'drink']],
    ['41: on a pack of solvent', 'pack', ['pack', 'v-card', 'v-low', 'v-lowest', 'trial', 'drink']],
    ['42: on a vial', 'v-low', ['v-low', 'v-lowest']],
    ['43: on a trial', 'trial', ['trial', 'drink']],
    ['44: on the other part of a trial', 'b-rhu', ['b-rhu', 'v-rhu', 'trial', 'drink']],
  ])('%s reaches all that it is in, and nothing else', (_, id, reached) => {
    put([marked(there<Markable>(id), 'something else got in', Date.UTC(2026, 10, 30))]);
    const all = [...shelf.records.value.values()].filter(isGraded).map((one) => one.id);
    expect(smellOnly(...all).sort()).toEqual([...reached].sort());
    expect(why(reached.at(-1)!)).toContain('something else got in');
    expect(there<Markable>(id).smellOnly!.at).toBe('2026-11-30T00:00:00.000Z');
  });

  test('45: on an own solvent, archived too', () => {
    put([
      ownSolvent(),
      vial('v-own', 'card', ['b-card'], { solvent: { ...ethanol, id: 'own', name: 'grain spirit' } }),
    ]);
    expect(grade('v-own')).toBe('fit for drinks');
    change('own', { ...MARK, archived: '2026-11-30T10:00:00.000Z' });
    expect(why('v-own')).toContain('diluted with grain spirit, and grain spirit was marked smell only (wrong bottle)');
    change('own', { smellOnly: undefined, food: false });
    expect(grade('v-own')).toBe('smell only');
    expect(solventsOnHand().some(({ id }) => id === 'own')).toBe(false);
    change('own', { archived: undefined });
    expect(solventsOnHand().find(({ id }) => id === 'own')).toMatchObject({ foodPossible: false });
  });

  test('46: stays, whatever is edited: its grade is asked no more', () => {
    change('b-card', { ...SMELL, ...MARK });
    expect(editables(there('b-card')).map(({ field }) => field.name)).not.toContain('grade');
    expect(changed(there('b-card'), { lot: 'X', grade: 'fit for drinks' })).toMatchObject({
      lot: 'X',
      ...MARK,
      ...SMELL,
    });
    expect(canBeMarked(there('b-card'))).toBe(false);
  });

  test('47: is how a bottle that was fit becomes smell only: the form only asks what was not known', () => {
    const asks = (id: string) =>
      editables(there(id))
        .map(({ field }) => field.name)
        .includes('grade');
    expect([asks('b-card'), asks('pack')]).toEqual([false, false]);
    change('b-card', SMELL);
    change('pack', { grade: undefined });
    expect([asks('b-card'), asks('pack')]).toEqual([true, true]);
    change('pack', { sort: 'strips', unit: 'pieces' });
    expect(asks('pack')).toBe(false);
  });

  test('48: a bottle that is called food grade later frees nothing that was made before', () => {
    change('b-card', SMELL);
    put([vial('v-then', 'card', ['b-card'], SMELL)]);
    change('b-card', { grade: 'fit for drinks' });
    expect(why('v-then')).toContain('is marked so on its label');
    put([vial('v-on', 'card', ['v-then'])]);
    expect(grade('v-on')).toBe('smell only');
  });

  test('is offered for what can be poured, once', () => {
    put([ownSolvent()]);
    const can = (id: string) => canBeMarked(there(id));
    expect(['b-card', 'pack', 'v-card', 'trial', 'own'].map(can)).toEqual([true, true, true, true, true]);
    expect(['drink', 'card', 'f'].map(can)).toEqual([false, false, false]);
    change('pack', { sort: 'strips' });
    expect(can('pack')).toBe(false);
  });

  test('lists what says fit and is not, nearest first; nothing of what was smell only before', () => {
    put([vial('v-nose', 'card', ['b-card'], SMELL)]);
    expect(toRelabel(there('b-card'))).toEqual([]);
    change('b-card', MARK);
    expect(toRelabel(there('b-card')).map(({ id }) => id)).toEqual([
      'b-card',
      'v-card',
      'v-low',
      'trial',
      'v-lowest',
      'drink',
    ]);
    expect(toRelabel(there('v-low')).map(({ id }) => id)).toEqual(['v-low', 'v-lowest']);
    expect(toRelabel(there('card'))).toEqual([]);
    expect(toRelabel(there('v-rhu'))).toEqual([]);
    expect(['b-card', 'v-nose', 'pack', 'drink', 'f'].map((id) => wasFit(there(id)))).toEqual([
      true,
      false,
      false,
      true,
      false,
    ]);
    expect(decidedBy('v-low').map(({ id }) => id)).toEqual(['v-lowest']);
  });
});

describe('what a thing is made of', () => {
  const made = (facts: Partial<Vial>, from: readonly string[] = ['b-card']) => {
    put([vial('v', 'card', from, facts), drink('d', 'v')]);
    return why('v');
  };

  test.each<[string, Partial<Vial>, readonly string[] | undefined, string]>([
    [
      '49: isopropanol, called food grade',
      { solvent: { ...ethanol, id: 'isopropanol-99', name: 'isopropanol 99 %' } },
      undefined,
      'was diluted with isopropanol 99 %: ',
    ],
    [
      '50: a solvent by another id',
      { solvent: { ...ethanol, id: 'moonshine', name: 'spirit' } },
      undefined,
      'no longer on the Shelf',
    ],
    ['51: no solvent and no origin', { solvent: null }, [], 'no longer on the Shelf'],
    ['52: an origin that was erased', {}, ['gone'], 'no longer on the Shelf'],
    [
      '53: an own solvent named isopropyl alcohol',
      { solvent: { ...ethanol, id: 'own', name: 'Isopropyl alcohol 99 %' } },
      undefined,
      'was diluted with Isopropyl alcohol',
    ],
    [
      '54: a solvent that no one called food grade',
      { solvent: { ...ethanol, food: false } },
      undefined,
      'that is not food grade',
    ],
    [
      '55: a pack no one has read the label of, for another solvent',
      {
        uses: [
          { id: 'b-card', massG: 1 },
          { id: 'unread', massG: 9 },
        ],
      },
      ['b-card', 'unread'],
      'no one has called food grade',
    ],
    [
      '56: a solvent of the table that was not asked about',
      {
        uses: [
          { id: 'b-card', massG: 1 },
          { id: 'triacetin', massG: 9 },
        ],
      },
      ['b-card'],
      'no one has called food grade',
    ],
    [
      '57: a mixture of no vials',
      { solvent: { ...ethanol, id: 'mixed', name: 'a mixture' } },
      undefined,
      'no longer on the Shelf',
    ],
    ['58: what its label says', SMELL, undefined, 'is marked so on its label'],
  ])('%s', (_, facts, from, reason) => {
    put([
      ownSolvent({ name: 'Isopropyl alcohol 99 %' }),
      pack({ id: 'unread', solvent: 'propylene-glycol', grade: undefined }),
    ]);
    expect(made(facts, from)).toContain(reason);
    expect(smellOnly('v', 'd')).toEqual(['v', 'd']);
    expect(() => kept(dose, dosing({ vial: 'v' }))).toThrow(NEVER);
    expect(label('v')).toContain('SMELL ONLY');
  });

  test.each([
    ['59: an own solvent that is named so', ownSolvent({ name: 'denatured alcohol' })],
    ['60: a pack that is named so', pack({ name: 'Isopropanol, technical' })],
    ['61: a pack of what is never fit', pack({ solvent: 'ethanol-denatured' })],
    ['62: a pack of an own solvent that is gone', pack({ solvent: 'gone' })],
    ['63: a bottle of what is never fit', bottle('ipa')],
  ])('%s', (_, record) => {
    put([
      newRecord('material', {
        id: 'ipa',
        name: 'Propan-2-ol',
        cas: '67-63-0',
        code: 'IPA',
        sort: 'substance',
        form: 'liquid',
        cautions: [],
      }),
      record,
    ]);
    expect(grade(record.id)).toBe('smell only');
    expect(labelSays(there<Graded>(record.id))).toBe('smell only');
  });

  test('64: a pack that no one has read the label of is asked about, and its answer counts for that solvent alone', () => {
    change('pack', { grade: undefined });
    expect(labelSays(there<Graded>('pack'))).toBeNull();
    expect(gradeWord(there('pack'))).toBeUndefined();
    expect(why('pack')).toBe(`No one has said that this bottle of ethanol 96 % is food grade: ${NEVER}.`);
    expect(grade('v-card')).toBe('fit for drinks');
    change('v-card', { solvent: { ...ethanol, food: false } });
    expect(smellOnly('v-card', 'v-low', 'drink')).toEqual(['v-card', 'v-low', 'drink']);
    expect(() => kept(dose, dosing())).toThrow(NEVER);
  });

  test('65: a trial in two solvents, one of them in isopropanol', () => {
    const typed = {
      formula: 'hand',
      'pick.v-card': 'yes',
      'plan.v-card': '5',
      'pick.v-ipa': 'yes',
      'plan.v-ipa': '5',
      ...named,
    };
    put([
      vial('v-ipa', 'rhu', ['b-rhu'], {
        ...SMELL,
        solvent: { ...ethanol, id: 'isopropanol-99', name: 'isopropanol 99 %', food: false },
      }),
    ]);
    const run = runOf({ ...typed, dropper: 'typical' }, { 'drops.v-card': 5, 'drops.v-ipa': 5 }, 'name');
    const [mixed] = kept(count, run) as [Vial];
    expect(mixed).toMatchObject({ ...SMELL, solvent: { id: 'mixed', food: false } });
    put([{ ...mixed, grade: 'fit for drinks', solvent: { ...mixed.solvent!, food: true } }, drink('d', mixed.id)]);
    expect(smellOnly(mixed.id, 'd')).toEqual([mixed.id, 'd']);
    expect(why(mixed.id)).toContain('isopropanol 99 %');
  });

  test('a trial in two solvents that are fit is fit', () => {
    put([
      vial('v-pg', 'rhu', ['b-rhu'], { solvent: { ...ethanol, id: 'propylene-glycol', name: 'propylene glycol' } }),
    ]);
    put([vial('mix', 'card', ['v-card', 'v-pg'], { solvent: { ...ethanol, id: 'mixed', name: 'both' } })]);
    expect(grade('mix')).toBe('fit for drinks');
  });

  test('a circle in a damaged backup is not walked for ever, and passes on what is smell only', () => {
    put([vial('a', 'card', ['b']), vial('b', 'card', ['a'])]);
    expect(smellOnly('a', 'b')).toEqual([]);
    change('b', MARK);
    expect(smellOnly('a', 'b')).toEqual(['a', 'b']);
    expect(why('a')).toContain('was made with');
  });

  test('66: a tasting names its vial in its doses, or only in what it used', () => {
    put([vial('v', 'card', ['b-card'], MARK), { ...drink('d1', 'v'), uses: [] }, { ...drink('d2', 'v'), doses: [] }]);
    expect(smellOnly('d1', 'd2')).toEqual(['d1', 'd2']);
    expect(inWords(there('d1')).facts).toContainEqual(['What is left of it', 'Smell it, do not taste it.']);
  });

  test('an older or a changed version of a thing is no better than the one on the Shelf', () => {
    const before = there<Graded>('b-card');
    change('b-card', MARK);
    expect(gradeNow(before).grade).toBe('smell only');
  });

  test('a thing that is not on the Shelf yet has the grade of what is in it', () => {
    const draft = vial('new', 'card', ['v-low']);
    expect(gradeNow(draft).grade).toBe('fit for drinks');
    expect(gradeNow({ ...draft, ...SMELL }).why).toContain('is marked so on its label');
    expect(gradeNow({ ...draft, ...MARK }).why).toContain('was marked smell only');
    change('b-card', MARK);
    expect(gradeNow(draft).why).toContain('was made with LOW');
    change('b-card', { smellOnly: undefined });
    change('pack', { grade: undefined });
    expect(gradeNow(vial('new', 'card', ['b-card', 'pack'])).grade).toBe('fit for drinks');
  });
});

describe('two copies of one thing', () => {
  const copy = (id: string, facts: object) =>
    ({ ...there(id), id: `${id}-2`, from: [...there(id).from, id], ...facts }) as AnyRecord;

  test('67: the other copy is smell only, and so is this one, with all that was made of it', () => {
    put([copy('b-card', SMELL)]);
    expect(smellOnly('b-card', 'b-card-2', 'v-card', 'drink')).toEqual(['b-card', 'b-card-2', 'v-card', 'drink']);
    expect(why('b-card')).toContain('Of the other copy, ');
  });

  test('68: this one is smell only, and so is what was made of the other copy', () => {
    put([copy('b-card', {}), vial('v-2', 'card', ['b-card-2'])]);
    expect(grade('v-2')).toBe('fit for drinks');
    change('b-card', MARK);
    expect(smellOnly('b-card-2', 'v-2')).toEqual(['b-card-2', 'v-2']);
    expect(why('b-card-2')).toContain('Of the other copy, ');
  });

  const at = (minute: number) => `2026-05-04T10:${String(minute).padStart(2, '0')}:00.000Z`;
  const merged = (here: AnyRecord, inFile: AnyRecord) => {
    const stored = { records: new Map<string, Stored>([[here.id, here]]), events: [] };
    const { changes } = planMerge({ made: at(0), records: [inFile], events: [], missing: 0 }, stored);
    takeIn(changes.flatMap((one) => ('record' in one ? [one.record] : [])));
  };

  test('69: marked on one device, changed later on the other, and restored there', () => {
    const base = { ...bottle('card'), written: at(0) };
    const here = { ...base, box: 'C', written: at(9), earlier: [at(0)] };
    put([here]);
    merged(here, { ...base, ...SMELL, written: at(5), earlier: [at(0)] });
    expect(smellOnly('b-card', 'v-card', 'drink')).toEqual(['b-card', 'v-card', 'drink']);
  });

  test('70: and the other way round, with the mark of today', () => {
    const base = { ...bottle('card'), written: at(0) };
    const here = { ...base, ...MARK, written: at(5), earlier: [at(0)] };
    put([here]);
    merged(here, { ...base, box: 'C', written: at(9), earlier: [at(0)] });
    expect(smellOnly('b-card', 'v-card', 'drink')).toEqual(['b-card', 'v-card', 'drink']);
  });
});

describe('what is read on the way to a drink', () => {
  const everywhere = (id: string) => ({
    chip: inWords(there(id)).grade,
    fact: inWords(there(id)).facts!.find(([name]) => name === 'Grade'),
    offers: nextsOf(there(id), inWords(there(id)).grade === 'smell only').map(({ words }) => words),
    label: label(id).includes('SMELL ONLY'),
    csv: recordTable(there(id))
      .split('\r\n')
      .find((row) => row.startsWith('grade'))
      ?.trim(),
  });

  test('71: chip, facts, offers, label, table and search say what is so now, of a vial of then', () => {
    expect(everywhere('v-low')).toMatchObject({
      chip: 'fit for drinks',
      fact: ['Grade', 'fit for drinks'],
      label: false,
    });
    expect(everywhere('v-low').offers).toContain('Dose it');
    expect(searchShelf('smell only', 20).map(({ id }) => id)).not.toContain('v-low');
    change('b-card', MARK);
    expect(everywhere('v-low')).toMatchObject({
      chip: 'smell only',
      fact: ['Grade', 'smell only', why('v-low')],
      label: true,
    });
    expect(everywhere('v-low').offers).not.toContain('Dose it');
    expect(everywhere('v-low').csv).toContain('smell only');
    expect(searchShelf('smell only', 20).map(({ id }) => id)).toContain('v-low');
  });

  test('72: the pages of bottles, packs, own solvents and drinks say it with the reason', () => {
    put([ownSolvent(MARK)]);
    change('b-card', MARK);
    change('pack', MARK);
    for (const id of ['b-card', 'pack', 'own', 'drink']) {
      expect(inWords(there(id))).toMatchObject({ grade: 'smell only' });
      expect(inWords(there(id)).facts).toContainEqual(['Grade', 'smell only', why(id)]);
    }
    expect(inWords(there('own')).line).toBe('not for food');
    expect(inWords(there('card')).grade).toBeUndefined();
    expect(isSmellOnly(there('card'))).toBe(false);
  });

  test('73: a formula is reckoned from what is fit alone', () => {
    change('b-card', { pricePerG: 2 });
    const use = { mgPerKg: 10, gramsPerL: 1, litres: 1, densityGPerMl: 1, glassMl: 100 };
    expect(costOf(there('f'), use).unpriced).toEqual([]);
    change('b-card', MARK);
    expect(costOf(there('f'), use).unpriced).toEqual(['card oil']);
  });
});
