import { find, list } from '../../records/shelf';
import type { Vial } from '../../records/kind/vial';
import type { Option } from '../../ui/controls/field';
import { formatGiven } from '../../ui/format';
import { dropperFor } from '../../workshop/dropMass';
import { isSmellOnly } from '../../workshop/drinkable/grade';
import { dropperOptions, liquidOfVial, vialOptions } from '../../workshop/onHand';
import { usualStep } from '../../workshop/scales';
import { answer, ask } from '../engine/answers';
import type { Field } from '../engine/fields';
import type { RunState } from '../engine/fold';
import { asBefore } from '../engine/lastTime';
import { oncePerRun } from '../engine/oncePerRun';
import { amountBefore, lastBase, likelyVial, neededOf, timesBefore } from './before';
import { drinkFields, fields, ON_SCALE, seriesFields } from './fields';

/** The questions on one vial that goes into the glass. */
export interface DoseAsked {
  readonly vial: Field<string>;
  readonly dropper: Field<string>;
  readonly aimIn: Field<'mg/kg' | 'drops'>;
  readonly aim: Field<number | null>;
}

/** The questions as the screen asks them now: as last time for this material, else as last time, else as benches usually do. */
export const asked = oncePerRun((run: RunState) => {
  const doses: DoseAsked[] = [];
  for (let i = 1; i <= vialsIn(run); i++) doses.push(doseAsked(run, i, doses.at(-1)));
  const vial = find('vial', answer(run, doses[0]!.vial));
  const { all } = timesBefore(vial);
  return {
    doses,
    ...drinkAsked(run),
    readability: asBefore(run, fields.readability, all, usualStep()),
    series: seriesAsked(run, doses[0]!, vial),
  };
});

/** How many vials the run doses from. */
export function vialsIn(run: RunState): number {
  let i = 1;
  while (answer(run, fields.more(i)) === 'yes') i++;
  return i;
}

function doseAsked(run: RunState, i: number, before: DoseAsked | undefined): DoseAsked {
  const options = vialsWith(answer(run, fields.vial(i)));
  const ml = answer(run, drinkAsked(run).volume) ?? 0;
  const likely = () => likelyVial((one) => neededOf(one, ml)) ?? '';
  const vial = asBefore(run, ask(fields.vial(i), { options }), [], i === 1 ? likely() : '');
  const chosen = find('vial', answer(run, vial));
  const { same, all } = timesBefore(chosen);
  const droppers = ask(fields.dropper(i), { options: dropperChoices() });
  const usual = before ? (answer(run, before.dropper) ?? '') : chosen ? dropperFor(liquidOfVial(chosen)) : 'typical';
  const aimIn = asBefore(run, fields.aimIn(i), i === 1 ? same : [], 'mg/kg');
  const unit = answer(run, aimIn) ?? 'mg/kg';
  return {
    vial,
    dropper: asBefore(run, droppers, before ? [] : all, usual),
    aimIn,
    aim: ask(asBefore(run, fields.aim(i, unit), i === 1 ? same : [], ''), { refuse: unit === 'drops' ? whole : none }),
  };
}

const whole = (drops: number | null) =>
  drops === null || Number.isInteger(drops) ? null : 'Target: whole drops only.';
const none = () => null;

function drinkAsked(run: RunState) {
  const options = bases();
  const usual = answer(run, drinkFields.name) === null ? lastBase() : undefined;
  const base = asBefore(run, ask(drinkFields.base, { options }), [], usual ?? 'new');
  const chosen = answer(run, base);
  const before = amountBefore(chosen === null || chosen === 'new' ? undefined : chosen);
  const by = asBefore(run, drinkFields.by, before, 'volume');
  return {
    base,
    by,
    volume: asBefore(run, drinkFields.volume, before, '250'),
    mass: drinkFields.mass,
    slack: asBefore(run, drinkFields.slack, [], answer(run, by) === 'mass' ? '0.1' : '2'), // a scale, or a jug; our choice
  };
}

function seriesAsked(run: RunState, { dropper, aim, aimIn }: DoseAsked, vial: Vial | undefined) {
  const { same, all } = timesBefore(vial);
  const wanted = answer(run, aimIn) === 'mg/kg' ? answer(run, aim) : null;
  const before = 'ladder' in run.done && answer(run, seriesFields.blank) === null; // the first version had none
  return {
    dropper: ask(dropper, { options: dropperChoices().filter(({ value }) => value !== ON_SCALE) }),
    lowest: asBefore(run, seriesFields.lowest, same, wanted === null ? '' : String(wanted / 2)),
    glasses: asBefore(run, seriesFields.glasses, all, '4'),
    factor: asBefore(run, seriesFields.factor, all, '2'),
    ownFactor: asBefore(run, seriesFields.ownFactor, all),
    blank: asBefore(run, seriesFields.blank, before ? [] : all, before ? 'no' : 'yes'),
    blind: asBefore(run, seriesFields.blind, all, 'yes'),
  };
}

/** Vials on the Shelf, with what speaks against one, and the chosen one wherever it is now. */
function vialsWith(chosen: string | null): Option[] {
  const all = list('vial');
  const away = find('vial', chosen);
  const shown = away && !all.includes(away) ? [...all, away] : all;
  return vialOptions(shown).map((option, at) => ({
    ...option,
    short: option.label.split(' · ')[0]!,
    ...(isSmellOnly(shown[at]!) ? { against: 'smell only, never in a drink' } : {}),
  }));
}

function dropperChoices(): Option[] {
  return [
    ...dropperOptions(),
    { value: ON_SCALE, label: 'On a scale', short: 'a scale', hint: 'weighed into the drink' },
  ];
}

/** Drinks dosed before, and a new one. */
function bases(): Option[] {
  const used = list('base').map(({ id, name, brix, abv }) => ({
    value: id,
    label: name,
    hint: `${formatGiven(brix)} °Brix, ${formatGiven(abv)} % ABV`,
  }));
  return [...used, { value: 'new', label: 'Another drink', short: 'another drink', always: true }];
}
