import { CONCENTRATE, SUGAR } from '../../core/batchPlan';
import { formatFixed, formatPlain } from '../../ui/format';
import { textOf, valueOf } from '../fields';
import type { RunState } from '../fold';
import type { Offer, Step } from '../task';
import { spareFactor } from './concentrate';
import { drawComposition } from './Composition';
import { fields } from './fields';
import type { Making } from './made';
import type { Pour } from './pour';

/** What the scales are, and what can be weighed on them. */
export function scaleStep(making: Making | null, least: number | null): Step {
  const small = making?.vessel.pours.flatMap(({ stock }) => stock?.from.name ?? []) ?? [];
  const lost = making?.vessel.pours.filter(({ tooSmall }) => tooSmall).map(({ goods }) => goods.name) ?? [];
  return {
    key: 'scale',
    say: 'Which scales?',
    more: [
      ...(least === null ? [] : [`The fine scale weighs ‹${formatPlain(least, 3)} g› and more.`]),
      ...(small.length > 0 ? [`Thinned first, because there is less of it: ${small.join(', ')}.`] : []),
      ...(lost.length > 0
        ? [`Too little for this scale, thinned or not: ${lost.join(', ')}. Make more, or take a finer scale.`]
        : []),
    ],
    ask: [fields.fine, fields.scatter, fields.tolerance, fields.coarse],
  };
}

/** One screen for each weighing, in order; stocks before what is weighed from them. */
export function weighSteps(run: RunState, making: Making): Step[] {
  const { pours } = making.vessel;
  return [
    ...pours.flatMap((pour, i) => [
      ...(pour.stock ? [stockStep(run, pour)] : []),
      concentrateStep(run, making, { pour, place: `${i + 1} of ${pours.length} for the concentrate` }),
    ]),
    ...making.syrup.map((pour, i) => syrupStep(run, pour, `${i + 1} of ${making.syrup.length} for the drink`)),
  ];
}

function stockStep(run: RunState, pour: Pour): Step {
  const { key, neat, thin, carrier, from, isMade } = pour.stock!;
  const amounts = [gramsOf(run, neat), gramsOf(run, thin)] as const;
  return {
    key,
    say: `Thin it first: ‹${amounts[0]} g› of ${from.name}, ‹${amounts[1]} g› of ${carrier.name}.`,
    more: ['It is too little for the scale. In a small vessel of its own, mixed well.', ...lotWords(pour)],
    ask: [fields.mass(key, `${from.name} weighed`), fields.mass(`${key}.thin`, `${carrier.name} weighed`)],
    offers: isMade
      ? []
      : [exactly({ [`mass.${key}`]: amounts[0], [`mass.${key}.thin`]: amounts[1] }, 'Both exactly so')],
    done: 'Mixed',
  };
}

function concentrateStep(run: RunState, making: Making, { pour, place }: { pour: Pour; place: string }): Step {
  const { key, goods, target, again, tooSmall } = pour;
  const grams = gramsOf(run, target);
  const isStock = making.vessel.pours.some((one) => one.goods.id === goods.id && one.stock);
  const chosen = run.typed[`over.${key}`];
  const open = pour.rescue !== null && chosen === undefined;
  return {
    key,
    say: again ? `Add ‹${grams} g› more of ${goods.name}.` : `Weigh ‹${grams} g› of ${goods.name}.`,
    more: [
      `${place}.`,
      ...lotWords(pour),
      ...(again ? ['So that its share comes back.'] : []),
      ...(again && isStock ? ['When its stock is used up, thin some more in the same way.'] : []),
      ...(tooSmall ? ['Less than this scale can weigh well.'] : []),
      ...offWords(run, pour),
      ...chosenWords(pour, chosen),
    ],
    ask: [fields.mass(key, 'The scale shows')],
    ...(open ? {} : { draw: drawComposition }),
    offers: open
      ? rescueOffers(making, pour)
      : pour.mass === null
        ? [exactly({ [`mass.${key}`]: grams }, `Exactly ${grams} g`)]
        : [],
    done: 'Weighed',
    ...(open ? { problem: 'It is over: choose how to go on.' } : {}),
  };
}

/** The two ways out of a weighing that went over. */
function rescueOffers({ idea, vessel }: Making, { key, rescue, goods }: Pour): Offer[] {
  const error = rescue!.keep.find(({ id }) => id === goods.id)?.error ?? 0;
  const litres = formatPlain(idea.drink.litres * vessel.factor * rescue!.factor, 4);
  return [
    {
      words: `Scale all up by ${formatPlain((rescue!.factor - 1) * 100, 2)} %, to ${litres} L`,
      type: { [`over.${key}`]: 'scale' },
      leave: true,
    },
    {
      words: `Keep it: ${formatPlain(error * 100, 2)} % too much ${goods.name}`,
      type: { [`over.${key}`]: 'keep' },
      leave: true,
    },
  ];
}

function chosenWords({ rescue }: Pour, chosen: string | undefined): string[] {
  if (!rescue || !chosen) return [];
  return [chosen === 'scale' ? 'Chosen: everything is scaled up to it.' : 'Chosen: it stays so.'];
}

function syrupStep(run: RunState, pour: Pour, place: string): Step {
  const { key, goods, target } = pour;
  const grams = gramsOf(run, target, pour.scale);
  return {
    key,
    say: `${pour.into === 'syrup' ? 'Into the syrup' : 'Into the drink'}: ‹${grams} g› of ${goods.name}.`,
    more: [`${place}.`, ...hintOf(run, goods.id), ...offWords(run, pour)],
    ask: [fields.mass(key, 'The scale shows')],
    offers: pour.mass === null ? [exactly({ [`mass.${key}`]: grams }, `Exactly ${grams} g`)] : [],
    done: 'In',
  };
}

/** A word on how it goes in. */
function hintOf(run: RunState, id: string): string[] {
  if (id === CONCENTRATE && spareFactor(run) > 1) return ['What is left of it can be kept as a vial at the end.'];
  if (id === CONCENTRATE) return ['All of it; rinse its vessel with some of the syrup.'];
  return id === SUGAR ? ['Stir until it is clear.'] : [];
}

function exactly(masses: Record<string, string>, words: string): Offer {
  return { words, type: masses, leave: true };
}

function lotWords({ goods }: Pour): string[] {
  return goods.source ? [goods.source.lot] : [];
}

/** How far a weighing is off, when it is more than the tolerance. */
function offWords(run: RunState, { mass, target, scale }: Pour): string[] {
  const tolerance = (valueOf(run, fields.tolerance) ?? 0) / 100;
  const halfStep = (valueOf(run, fields[scale]) ?? 0) / 2;
  const off = mass ? mass.value - target : 0;
  if (!(Math.abs(off) > Math.max(tolerance * target, halfStep))) return [];
  const percent = formatPlain((Math.abs(off) / target) * 100, 2);
  const words = `‹${formatPlain(Math.abs(off), 3)} g› ${off > 0 ? 'over' : 'short'}, ${percent} %.`;
  return [off > 0 ? words : `${words} Add to it, and type what the scale shows then.`];
}

/** Grams as the scale shows them. */
function gramsOf(run: RunState, grams: number, scale: 'fine' | 'coarse' = 'fine'): string {
  const step = Number(textOf(run, scale === 'fine' ? fields.fine : fields.coarse).replace(',', '.'));
  const decimals = step > 0 ? Math.max(0, Math.ceil(-Math.log10(step) - 1e-9)) : 2;
  return formatFixed(grams, Math.min(6, decimals));
}
