import { ladder } from '../../core/sensory/threshold';
import { find, list } from '../../records/shelf';
import type { Vial } from '../../records/kind/vial';
import { answer, ask } from '../engine/answers';
import { amount, choice, optionalAmount, pick, textOf, whole, type Field } from '../engine/fields';
import { isSmellOnly } from '../../workshop/drinkable/grade';
import type { RunState } from '../engine/fold';
import { asBefore } from '../engine/lastTime';
import { dropperOptions, vialOptions } from '../../workshop/onHand';
import { Refusal } from '../../core/text/refusal';
import type { Option } from '../../ui/controls/field';
import { fields } from './fields';

/** The question for the unit. */
export const unitField = choice({
  name: 'unit',
  title: 'How is the strength expressed?',
  preset: 'mg/kg',
  options: [
    { value: 'mg/kg', label: 'mg/kg', hint: 'ppm by mass in the drink' },
    { value: '% w/w', label: '% w/w', hint: 'for what is strong, sugar or acid' },
    { value: 'drops', label: 'Drops of a vial', short: 'drops', hint: 'counted into each cup' },
  ],
});
const levelsField = whole({ name: 'levels', title: 'Steps', unit: 'strengths', min: 4, max: 10, preset: '6' });
/** Drops of the weakest step. */
export const weakestField = whole({
  name: 'weakest',
  title: 'Weakest step',
  unit: 'drops',
  min: 1,
  max: 50,
  preset: '1',
});
/** How much drink is in a cup, g; it may stay empty. */
export const cupField = optionalAmount({
  name: 'cupG',
  title: 'Drink in each cup',
  unit: 'g',
  above: 0,
  max: 1000,
  help: 'Optional. If given, the threshold is also shown in mg/kg.',
});
const TOPS: Readonly<Record<string, number>> = { 'mg/kg': 1e6, '% w/w': 100 };
const MOST_DROPS = 500; // our choice: more are not counted into a cup

/** The unit of the ladder: mg/kg, % w/w or drops. */
export function unitOf(run: RunState): string {
  return answer(run, unitField) ?? 'mg/kg';
}

/** The questions on the drops of a ladder: of which vial, from which dropper, into how much drink. */
export function dropFields(run: RunState): Field[] {
  return [vialField(run), dropperField(run), cupField];
}

const ladderVial = pick({ name: 'ladderVial', title: 'Vial' });
const ladderDropper = pick({ name: 'dropper', title: 'Dropper' });

/** In a slot a vial goes by its code. */
function shortly(option: Option): Option {
  return { ...option, short: option.label.split(' · ')[0]! };
}

function vialField(run: RunState): Field<string> {
  const picked = answer(run, fields.from(1));
  const vials = list('vial').filter((vial) => !isSmellOnly(vial));
  const preset = vials.some(({ id }) => id === picked) ? { preset: picked! } : {};
  return ask(ladderVial, { options: vialOptions(vials).map(shortly), ...preset });
}

/** A dropper of one's own where there is one, as it was when the card was left; before that was recorded it was the typical one. */
function dropperField(run: RunState): Field<string> {
  const own = answer(run, fields.seed) === null ? list('dropper')[0]?.id : undefined;
  return asBefore(run, ask(ladderDropper, { options: dropperOptions() }), [], own ?? 'typical');
}

/** The questions on the steps. */
export function ladderFields(run: RunState): Field[] {
  return [unitOf(run) === 'drops' ? weakestField : topField(run), levelsField, factorField(run)];
}

function topField(run: RunState): Field<number> {
  const unit = unitOf(run);
  return amount({ name: 'top', title: 'Strongest step', unit, above: 0, max: TOPS[unit]! });
}

function factorField(run: RunState): Field<string> {
  return choice({
    name: 'factor',
    title: 'From step to step',
    preset: unitOf(run) === 'drops' ? '2' : '3',
    options: [
      { value: '2', label: 'times 2' },
      { value: '3', label: 'times 3', hint: 'usual' },
    ],
  });
}

/** The ladder in its unit, rising; null until all is known. @throws Refusal when no one could count its drops */
export function levelsOf(run: RunState): number[] | null {
  const count = answer(run, levelsField);
  const factor = Number(answer(run, factorField(run)) ?? NaN);
  const drops = unitOf(run) === 'drops';
  const end = drops ? answer(run, weakestField) : answer(run, topField(run));
  if (count === null || end === null || !(factor > 1) || (drops && !dropsKnown(run))) return null;
  if (!drops) return ladder(end, factor, count);
  const top = end * factor ** (count - 1);
  if (top > MOST_DROPS)
    throw new Refusal('The strongest step would be {top} drops: take fewer steps, or times 2 from step to step.', {
      top,
    });
  return ladder(top, factor, count).map(Math.round); // whole already, but for the last bit
}

function dropsKnown(run: RunState): boolean {
  return vialOfLadder(run) !== null && cupField.read(textOf(run, cupField)).ok;
}

/** The vial that the ladder's drops come from, or null. */
export function vialOfLadder(run: RunState): Vial | null {
  if (unitOf(run) !== 'drops') return null;
  const chosen = answer(run, ladderVial); // it stays so when it becomes smell only
  return find('vial', chosen ?? textOf(run, vialField(run))) ?? null;
}

/** What turns the drops of a ladder into mg/kg; null where that is not asked. */
export interface DropsInCup {
  readonly vial: string;
  readonly dropper: string;
  readonly cupG: number;
}

/** What turns the drops of the ladder into mg/kg, or null. */
export function dropsInCup(run: RunState): DropsInCup | null {
  const [vial, cupG] = [vialOfLadder(run), answer(run, cupField)];
  return vial && cupG !== null ? { vial: vial.id, dropper: textOf(run, dropperField(run)), cupG } : null;
}
