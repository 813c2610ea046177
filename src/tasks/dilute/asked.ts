import type { Bottle } from '../../records/kind/material';
import { find, list, shelf } from '../../records/shelf';
import type { Supply } from '../../records/kind/supply';
import type { Vial } from '../../records/kind/vial';
import type { Option } from '../../ui/controls/field';
import { formatTyped } from '../../ui/format';
import { leftPhrase } from '../../ui/left';
import { leftOf } from '../../records/stock';
import { calledOf, labelTagOf, strengthWords } from '../../workshop/thing/labelled';
import { dropperOptions, solventBottles, solventsOnHand, vialOptions } from '../../workshop/onHand';
import { isSmellOnly } from '../../workshop/drinkable/grade';
import { attempt, Refused } from '../../workshop/attempt';
import { asSolvent } from '../../workshop/asSolvent';
import { whyNotByItself } from '../../workshop/takenByItself';
import { usualStep } from '../../workshop/scales';
import { answer, ask, isBegun } from '../engine/answers';
import type { Field } from '../engine/fields';
import type { RunState } from '../engine/fold';
import { asBefore, asIfLeft, lastTime, type Answers } from '../engine/lastTime';
import { oncePerRun } from '../engine/oncePerRun';
import { fields, measures, ON_SCALE } from './fields';
import { orderOf, tooLittleOf } from './making';
import { staysCloudy } from './dissolves';
import { sourceOf } from './source';

/**
 * The questions of a dilution as its card asks them now: as last time for this material, else as last time, else as benches usually do.
 * What is diluted is the first of those that are likely of which there is enough for all the rest.
 */
export const asked = oncePerRun((run: RunState) => {
  const source = ask(fields.source, { options: sourceOptions() });
  const given = askedFrom(run, asBefore(run, source, [], ''));
  if (answer(run, given.source) !== null) return given;
  for (const id of likelySources()) {
    const now = askedFrom(run, ask(source, { preset: id }));
    if (isEnough(asIfLeft(run, Object.values(now)))) return now;
  }
  return given;
});

/** Whether there is as much of the source as the plan takes; true where no one knows what is left, or nothing is planned yet. */
function isEnough(now: RunState): boolean {
  const order = attempt(() => orderOf(now));
  return order === null || order instanceof Refused || tooLittleOf(order) === null;
}

/** The rest of the questions, for what is diluted. */
function askedFrom(run: RunState, source: Field<string>) {
  const before = timesBefore(answer(run, source));
  const basis = asBefore(run, fields.basis, [basisOfVial(answer(run, source)), ...before], shelf.settings.value.basis);
  const further = find('vial', answer(run, source)); // a vial is diluted to a tenth
  const strengths = further ? [] : before;
  const usual = further ? formatTyped(further.label.value / 10) : '1';
  const strength = asBefore(run, fields.strength(answer(run, basis) ?? '% w/v'), strengths, usual);
  const options = solventChoices(cloudy(run, answer(run, strength), answer(run, basis)));
  const size = sizeAsked(run, before);
  const needed = answer(run, size) ?? 0;
  const fit = before.map((answers) => fitSolvent(answers, needed));
  const solvent = asBefore(run, ask(fields.solvent, { options }), fit, ownSolventBottle(needed));
  const droppers = [
    ...dropperOptions(),
    { value: ON_SCALE, label: 'On a scale', short: 'a scale', hint: 'weighed in' },
  ];
  const dropper = asBefore(run, ask(fields.dropper, { options: droppers }), before, droppers[0]!.value);
  return {
    source,
    basis,
    strength,
    size,
    solvent,
    measure: asBefore(run, ask(fields.measure, { options: measures() }), before, 'syringe'),
    dropper:
      answer(run, fields.way) === 'mass' && !isBegun(run, fields.dropper)
        ? ask(dropper, { preset: ON_SCALE })
        : dropper,
    readability: asBefore(run, fields.readability, before, usualStep()),
    whole: asBefore(run, fields.whole, before),
  };
}

/** The run as it would be with its card left as it is: what all of it is worked out from. */
export const settled = oncePerRun((run: RunState): RunState => asIfLeft(run, Object.values(asked(run))));

/** A vial is diluted further in the basis of its own strength. */
function basisOfVial(source: string | null): Answers {
  const vial = find('vial', source);
  return vial ? { [fields.basis.name]: vial.label.basis } : {};
}

/** The vial: the first version had "Another size" and asked for it apart. */
function sizeAsked(run: RunState, before: readonly Answers[]): Field<number> {
  const size = asBefore(run, fields.size, before, '10');
  const own = answer(run, fields.ownSize);
  return {
    ...size,
    read: (text, sign) => (text === 'own' && own !== null ? { ok: true, value: own } : size.read(text, sign)),
  };
}

/** Answers of the last dilution of this material (a bottle's or a vial's), and of the last of any. */
function timesBefore(source: string | null): Answers[] {
  const vials = list('vial').filter(
    ({ sort, contents }) => sort === 'dilution' || (sort === undefined && contents.length === 1),
  );
  const material = materialOf(source);
  const same = material === undefined ? [] : vials.filter(({ contents }) => contents[0]?.material === material);
  return [same, vials].flatMap((all) => (all[0] ? [lastTime(all), factsOf(all[0])] : []));
}

function materialOf(source: string | null): string | undefined {
  const bottle = list('bottle').find(({ id }) => id === source);
  return bottle ? bottle.material : list('vial').find(({ id }) => id === source)?.contents[0]?.material;
}

/** What a vial of the first version tells of how it was asked. */
function factsOf({ label, sizeMl, solvent, uses }: Vial): Answers {
  const bottle = uses.map(({ id }) => list('supply').find((one) => one.id === id)?.id).find((id) => id !== undefined);
  const dropper = uses[0]?.dropper?.id;
  return {
    [fields.strength('% w/v').name]: String(label.value),
    [fields.basis.name]: label.basis,
    [fields.size.name]: String(sizeMl),
    ...(solvent ? { [fields.solvent.name]: bottle ?? solvent.id } : {}),
    ...(dropper ? { [fields.dropper.name]: dropper } : {}),
  };
}

/** Answers of before without a bottle of solvent that is past its date, empty, put away or has less than that many mL. */
function fitSolvent(answers: Answers, ml: number): Answers {
  const { [fields.solvent.name]: id, ...rest } = answers;
  const bottle = list('supply').find((one) => one.id === id);
  return id === undefined || (bottle && whyNotByItself(bottle, { grams: gramsOf(bottle, ml) }) !== null)
    ? rest
    : answers;
}

/** The newest bottle of solvent on the Shelf that is taken by itself for that many mL. */
function ownSolventBottle(ml: number): string | undefined {
  return solventBottles().find((one) => whyNotByItself(one, { grams: gramsOf(one, ml) }) === null)?.id;
}

function gramsOf({ solvent }: Supply, ml: number): number {
  return ml * (solventsOnHand().find(({ id }) => id === solvent)?.density.gPerMl ?? 1);
}

/** What is most likely diluted next, by id: the bottles that no vial was made from, newest first, then that of last time, then the others. */
function likelySources(): string[] {
  const bottles = list('bottle').filter((one) => whyNotByItself(one) === null && !isSolvent(one));
  const ids = bottles.map(({ id }) => id);
  const used = list('vial').flatMap(({ uses }) => uses.map(({ id }) => id));
  const [last] = used.filter((id) => ids.includes(id));
  const inUse = new Set(used);
  return [...new Set([...ids.filter((id) => !inUse.has(id)), ...(last ? [last] : []), ...ids])];
}

/** A solvent that was put on the Shelf as a material is not what someone dilutes. */
function isSolvent({ material }: Bottle): boolean {
  const known = find('material', material);
  return known !== undefined && asSolvent(known.name, known.cas).length > 0;
}

/** What can be diluted: bottles first, then a new one, then vials. */
function sourceOptions(): Option[] {
  const bottles = list('bottle').map((bottle): Option => {
    const { name } = calledOf(bottle);
    const why = whyNotByItself(bottle);
    const left = leftOf(bottle);
    return {
      value: bottle.id,
      label: `${labelTagOf(bottle)} · ${name}`,
      short: labelTagOf(bottle),
      hint: [bottle.supplier, bottle.lot && `lot ${bottle.lot}`, left && leftPhrase(left, 'g')]
        .filter(Boolean)
        .join(' · '),
      ...(why ? { against: why } : isSmellOnly(bottle) ? { against: 'smell only' } : {}),
    };
  });
  const vials = vialOptions().map((option): Option => ({
    ...option,
    short: option.label.split(' · ')[0]!,
    group: 'Dilute a vial further',
  }));
  return [
    ...bottles,
    { value: 'new', label: 'A new bottle', short: 'a new bottle', hint: 'that is not on the Shelf yet', always: true },
    ...vials,
  ];
}

/** Which solvents leave the source of a run undissolved at a strength, in a few words; nothing where that is not known. */
function cloudy(run: RunState, value: number | null, basis: string | null): (solvent: string) => string | undefined {
  const source = sourceOf(run);
  if (!source || value === null) return () => undefined;
  const mgPerL = basis?.startsWith('%') ? value * 10_000 : value;
  const at = strengthWords({ value, basis: basis ?? '' });
  return (solvent) => (staysCloudy(source, solvent, mgPerL) ? `will not dissolve at ${at}` : undefined);
}

/** Bottles of solvent on the Shelf first, with what they bring, then what benches usually have, then another one. */
function solventChoices(clouds: (solvent: string) => string | undefined): Option[] {
  const own = solventBottles().map((one): Option => {
    const why = whyNotByItself(one);
    const against = [isSmellOnly(one) && 'smell only', why, clouds(one.solvent ?? '')].filter(Boolean).join(', ');
    return {
      value: one.id,
      label: one.name,
      hint: [one.supplier, one.lot && `lot ${one.lot}`, leftPhrase(leftOf(one)!, 'g')].filter(Boolean).join(' · '),
      ...(against ? { against } : {}),
    };
  });
  const group = own.length > 0 ? 'Not on the Shelf' : '';
  const owned = new Set(solventBottles().map(({ solvent }) => solvent));
  const usual = solventsOnHand()
    .filter(({ id }) => !owned.has(id))
    .map(({ id, name, foodPossible }): Option => ({
      value: id,
      label: name,
      group,
      ...(foodPossible ? {} : { against: 'smell only' }),
      ...(clouds(id) ? { against: clouds(id)! } : {}),
    }));
  return [...own, ...usual, { value: 'new', label: 'Another solvent', short: 'another solvent', group, always: true }];
}
