import { exact, measured } from '../../../src/core/number/measured';
import type { AnyRecord, RecordOf } from '../../../src/records/kind/kinds';
import type { Vial } from '../../../src/records/kind/vial';
import { newRecord, shelf, takeIn } from '../../../src/records/shelf';
import { labelOf } from '../../../src/app/describe/labelOf';
import { gradeNow, refusalOf } from '../../../src/workshop/drinkable/grade';
import type { Graded } from '../../../src/workshop/drinkable/gradeCause';
import type { Labelled } from '../../../src/workshop/thing/labelled';
import { freshRun, type RunState } from '../../../src/tasks/engine/fold';
import type { Task } from '../../../src/tasks/engine/task';
import { ethanol, material, vialOf } from '../../tasks/count/countShelf';
import { asLeft } from '../../tasks/walking';

export { ethanol };
type Bottle = RecordOf<'bottle'>;
type Supply = RecordOf<'supply'>;
type Solvent = RecordOf<'solvent'>;
export type Tasting = RecordOf<'tasting'>;

const sure = exact;
export const SMELL = { grade: 'smell only' } as const;
export const MARK = { smellOnly: { at: '2026-11-30T09:00:00.000Z', why: 'wrong bottle' } };

export const bottle = (of: string, facts: Partial<Bottle> = {}): Bottle => ({
  ...newRecord('bottle', {
    id: `b-${of}`,
    from: [of],
    material: of,
    supplier: 'made up',
    lot: `L-${of}`,
    grade: 'fit for drinks',
  }),
  ...facts,
});

export const pack = (facts: Partial<Supply> = {}): Supply => ({
  ...newRecord('supply', {
    id: 'pack',
    name: 'ethanol 96 %',
    sort: 'solvent',
    solvent: 'ethanol-96',
    unit: 'g',
    amount: 800,
    supplier: 'made up',
    lot: 'E-1',
    grade: 'fit for drinks',
  }),
  ...facts,
});

export const ownSolvent = (facts: Partial<Solvent> = {}): Solvent => ({
  ...newRecord('solvent', {
    id: 'own',
    name: 'grain spirit',
    density: { gPerMl: 0.81, atC: 20, source: 'test' },
    food: true,
    dryOff: 'minutes',
  }),
  ...facts,
});

/** 10 g of a 1 % vial of a material, made of these things: 0.1 g of the first, the rest of its solvent or of the second. */
export function vial(id: string, of: string, made: readonly string[], facts: Partial<Vial> = {}): Vial {
  const [first, second] = made;
  return {
    ...vialOf(id, 0.01, { material: of }),
    from: [...made, `run-${id}`],
    uses: [...(first ? [{ id: first, massG: 0.1 }] : []), ...(second ? [{ id: second, massG: 9.9 }] : [])],
    sort: 'dilution',
    ...facts,
  };
}

/** A drink that was dosed from a vial. */
export function drink(id: string, from: string, facts: Partial<Tasting> = {}): Tasting {
  return {
    ...newRecord('tasting', {
      id,
      from: [from, `run-${id}`],
      base: { name: 'tonic', volumeMl: 100, brix: 8, abv: 0, densityGPerMl: 1.03 },
      doses: [{ vial: from, code: from.toUpperCase(), drops: 5, massG: sure(0.075) }],
      reached: [{ material: 'card', name: 'card oil', mgPerKg: sure(7), mgPerL: sure(7) }],
      verdict: '',
      liking: 7,
      uses: [{ id: from, massG: 0.075 }],
    }),
    ...facts,
  };
}

export const formula = newRecord('formula', {
  id: 'f',
  name: 'Orchard',
  root: 'f',
  version: 1,
  notes: '',
  lines: [{ material: 'card', name: 'card oil', share: 1 }],
});

/** Two materials with a bottle each, a pack of spirit, a dilution of each, one diluted further, a trial of both and a drink of it. */
export function fitShelf(): AnyRecord[] {
  const both = {
    ...vial('trial', 'card', [], { sort: 'trial', code: 'T1', solvent: ethanol }),
    from: ['v-card', 'v-rhu', 'f', 'run-trial'],
    contents: ['card', 'rhu'].map((of) => ({
      material: of,
      name: `${of} oil`,
      strength: measured(0.005, 0.0001, { id: of, words: '' }),
    })),
    uses: ['v-card', 'v-rhu'].map((id) => ({ id, massG: 5, drops: 300 })),
  };
  return [
    material('card'),
    material('rhu'),
    bottle('card'),
    bottle('rhu'),
    pack(),
    vial('v-card', 'card', ['b-card', 'pack'], { code: 'CARD' }),
    vial('v-rhu', 'rhu', ['b-rhu'], { code: 'RHU' }),
    vial('v-low', 'card', ['v-card'], { code: 'LOW' }),
    vial('v-lowest', 'card', ['v-low'], { code: 'LEAST' }),
    both,
    drink('drink', 'trial'),
    formula,
  ];
}

/** A new Shelf of these. */
export function shelve(records: readonly AnyRecord[]): void {
  shelf.records.value = new Map();
  takeIn(records);
}

/** More of it. */
export const put = (all: readonly AnyRecord[]): void => takeIn(all);

/** What is on the Shelf under an id. */
export function there<R extends AnyRecord = AnyRecord>(id: string): R {
  return shelf.records.value.get(id) as R;
}

/** Changes something that is on the Shelf, as an edit would. */
export function change(id: string, facts: object): void {
  takeIn([{ ...there(id), ...facts } as AnyRecord]);
}

export const runOf = (
  typed: Record<string, string>,
  drops: Record<string, number> = {},
  at = '',
  presets: Record<string, string> = {},
): RunState => ({ ...freshRun, typed, drops, at, presets });

/** The step that a run stands at. */
export function stepAt(task: Task, run: RunState) {
  const steps = task.steps(run);
  return steps.find(({ key }) => key === run.at) ?? steps[0]!;
}

/** What a run ends in, with all steps left as they are. */
export const kept = (task: Task, run: RunState) => task.keep(asLeft(task, run));

export const grade = (id: string) => gradeNow(there<Graded>(id)).grade;
export const why = (id: string) => refusalOf(there<Graded>(id));
/** Those of these that are smell only. */
export const smellOnly = (...ids: string[]) => ids.filter((id) => grade(id) === 'smell only');
/** What is on the label of a thing. */
export const label = (id: string) =>
  labelOf(there<Labelled>(id), 'vial')
    .content.paragraphs.flat()
    .map(({ text }) => text.replaceAll('\u00a0', ' '))
    .join(' ');
export const NEVER = 'smell only, it never goes into a drink';

/** Five drops of a vial into 100 mL of tonic. */
export const dosing = (typed: object = {}, drops: Record<string, number> = { drops: 5 }, at = 'drops') =>
  runOf(
    {
      vial: 'v-card',
      dropper: 'typical',
      base: 'new',
      'base.name': 'tonic',
      'base.ml': '100',
      'base.slack': '2',
      ...typed,
    },
    drops,
    at,
  );
