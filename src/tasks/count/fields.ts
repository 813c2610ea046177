import { find } from '../../records/shelf';
import { answer } from '../engine/answers';
import { amount, choice, code, given, pick, whole, words, type Field } from '../engine/fields';
import type { RunState } from '../engine/fold';
import type { Step } from '../engine/task';
import { readability } from '../shared/readabilityField';

/** One step of a count: its card, each turn at a vial with what may follow it, and the glass that all of it goes into. */
export type CountStep = Step<'card' | `count.${string}` | `slip.${string}` | `weigh.${string}` | 'truth'>;

/** The questions of a count. */
export const fields = {
  /** The id of a formula; or materials and parts, or vials and drops, typed here. */
  way: pick({ name: 'formula', title: 'Formula' }),
  /** Which plan of the curve, by its drops. */
  point: pick({ name: 'point', title: 'Drops' }),
  purpose: choice({
    name: 'purpose',
    title: 'What for',
    options: [
      { value: 'smell', label: 'To smell', short: 'to smell', hint: 'any vial may go in' },
      { value: 'taste', label: 'To dose later', short: 'to dose later', hint: 'only vials that are fit for drinks' },
      {
        value: 'drink',
        label: 'All of it into one drink',
        short: 'into one drink',
        hint: 'fit for drinks, to a target in mg/kg',
      },
    ],
  }),
  ppm: amount({
    name: 'ppm',
    title: 'All neat material together',
    unit: 'mg/kg',
    above: 0,
    max: 1e5,
    help: 'By mass in the finished drink.',
  }),
  drinkMl: amount({ name: 'drinkMl', title: 'The finished drink', unit: 'mL', above: 0, max: 1e5 }),
  base: pick({ name: 'base', title: 'Drink', preset: 'water' }),
  most: whole({ name: 'most', title: 'Drops at most', unit: 'drops', min: 1, max: 300, preset: '100' }),
  mix: choice({
    name: 'mix',
    title: 'Vials for one material',
    preset: '1',
    options: [
      { value: '1', label: 'One' },
      { value: '2', label: 'Up to two', hint: 'two strengths of it may be mixed' },
    ],
  }),
  dropper: pick({ name: 'dropper', title: 'Dropper' }),
  /** The vial that a line is counted from; ANY for the one that fits best. */
  stock: (material: string) => pick({ name: `stock.${material}`, title: 'From' }),
  size: amount({ name: 'size', title: 'Vial', unit: 'mL', above: 0, max: 1000 }),
  picked: (id: string) => given(`pick.${id}`, ['yes', 'no']),
  planned: (id: string, title = 'Drops'): Field<number> =>
    whole({ name: `plan.${id}`, title, unit: 'drops', min: 1, max: 500 }),
  parts: (id: string, title = 'Parts'): Field<number> =>
    amount({ name: `part.${id}`, title, unit: 'parts', above: 0, max: 1e6 }),
  /** Vials that another task hands over: ids with spaces between. */
  handed: words({ name: 'vials', title: 'Vials', max: 1e6 }),
  /** The trial that is made exactly again. */
  exactly: words({ name: 'exactly', title: 'As in' }),
  /** The plan that was taken, as `targetsText`, and the error of its furthest line. */
  plan: words({ name: 'plan', title: 'Plan', max: 1e6 }),
  planError: words({ name: 'plan-error', title: 'Furthest off' }),
  advice: given('advice', ['yes']),
  slip: (key: string) => words({ name: `slip.${key}`, title: 'How do you want to continue?', max: 1e6 }),
  /** How many drops of a vial, or of ALL, were on the scale, and what they weigh. */
  weighs: (id: string) => whole({ name: `weighs.${id}`, title: 'Drops on the scale', unit: 'drops', min: 1 }),
  grams: (id: string) =>
    amount({ name: `weighed.${id}`, title: 'The scale shows', unit: 'g', above: 0, max: 500, scale: readability }),
  readability,
  /** The first version asked for both; now they go by themselves. */
  name: words({ name: 'name', title: 'Name of the trial', max: 60 }),
  code: code({ name: 'code', title: 'Code on the vial' }),
};

/** The vial of a line is whichever fits best. */
export const ANY = 'any';
/** All vials of the trial together. */
export const ALL = 'all';

/** What the next count begins with. */
export const remembers = [
  ...[fields.way, fields.purpose, fields.ppm, fields.drinkMl, fields.base, fields.most, fields.mix],
  ...[fields.dropper, fields.size, fields.readability],
]
  .map(({ name }) => name)
  .concat('stock.');

/** What a repeat begins with. */
export const repeats = [
  ...[fields.way, fields.purpose, fields.ppm, fields.drinkMl, fields.base, fields.most, fields.mix],
  ...[fields.dropper, fields.size],
]
  .map(({ name }) => name)
  .concat('pick.', 'part.');

/** 'hand' for vials and drops typed, 'materials' for parts of materials, the id of a formula, or '' while nothing is chosen. */
export function wayOf(run: RunState): string {
  return answer(run, fields.way) ?? '';
}

/** The name of its formula; '' for what was typed here. */
export function formulaName(run: RunState): string {
  return find('formula', wayOf(run))?.name ?? '';
}

/** The dropper of the run; a typical one while none is chosen. */
export function dropperOf(run: RunState): string {
  return answer(run, fields.dropper) ?? 'typical';
}
