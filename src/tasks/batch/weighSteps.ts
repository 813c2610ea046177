import { CONCENTRATE, SUGAR } from '../../core/drink/batchPlan';
import type { Rescue } from '../../core/drink/weighList';
import { find } from '../../records/shelf';
import { formatPlain, gramsText, showsNothing, typedOnScale } from '../../ui/format';
import { supposing, types } from '../engine/answers';
import type { RunState } from '../engine/fold';
import type { Offer, Step } from '../engine/task';
import { beginAgainOffer, begunSteps } from './beginAgain';
import { drawComposition } from './Composition';
import { drawDrink } from './DrinkSoFar';
import { hasTwoVessels, stepsAfter, vesselOf } from './emulsionSteps';
import { massField } from './plan/asked';
import { fields } from './plan/fields';
import type { Goods } from './plan/goods';
import { doseIn, expectedDrink, makingOf, type Making } from './progress';
import { carrierKey, offBy, stepOf, type Pour } from './vessel/pour';
import { tareWords } from './tareWords';
import { wayOf, type Way } from './vessel/vessel';

/** The first thing that the hand does, for the button that leads to it; null where nothing is planned. */
export function firstMovement(run: RunState, { vessel }: Making): string | null {
  const [pour] = vessel.pours;
  if (!pour) return null;
  const { from, neatG } = pour.stock ?? { from: pour.goods, neatG: pour.target };
  return `Weigh ${onScale(run, neatG).text} of ${from.tag ?? from.name}`;
}

/** One screen for each weighing, in order; stocks before what is weighed from them. */
export function weighSteps(run: RunState, making: Making): Step[] {
  const { pours } = making.vessel;
  return [
    ...begunSteps(run, making, 'concentrate'),
    ...pours.flatMap((pour, i) => [
      ...(pour.stock ? [stockStep(run, pour)] : []),
      concentrateStep(run, making, { pour, place: `${i + 1} of ${pours.length} ${whither(run, making, pour)}` }),
      ...stepsAfter(run, making.plan, { pours, i }),
    ]),
    ...begunSteps(run, making, 'drink alone'),
    ...making.syrup.pours.flatMap((pour, i, all) => [
      ...(pour.stock ? [stockStep(run, pour)] : []),
      syrupStep(run, making, { pour, place: `${i + 1} of ${all.length} for the drink` }),
    ]),
  ];
}

/** What a weighing is for; of an emulsion which of its two vessels it goes into. */
function whither(run: RunState, { plan }: Making, pour: Pour): string {
  if (!hasTwoVessels(run, plan)) return 'for the concentrate';
  return vesselOf(pour, plan) === 'oil'
    ? 'for the emulsion: into the oil vessel'
    : 'for the emulsion: into the water vessel';
}

/** What goes into the same vessel of the concentrate. */
function beside(run: RunState, { plan, vessel: { pours } }: Making, pour: Pour): readonly Pour[] {
  if (!hasTwoVessels(run, plan)) return pours;
  return pours.filter((one) => vesselOf(one, plan) === vesselOf(pour, plan));
}

function stockStep(run: RunState, pour: Pour): Step {
  const { key, neatG, carrierG, carrier, from, made } = pour.stock!;
  const amounts = [onScale(run, neatG), onScale(run, carrierG)] as const;
  return {
    key,
    say: pour.again
      ? `Dilute some more: ‹${amounts[0].text}› of ${called(from)}, ‹${amounts[1].text}› of ${carrier.name}.`
      : `Dilute it first: ‹${amounts[0].text}› of ${called(from)} and ‹${amounts[1].text}› of ${carrier.name}.`,
    more: [
      pour.again
        ? 'What is left of the first is not enough. In a small vessel of its own, mixed well.'
        : 'It is too little for the scale. In a small vessel of its own, mixed well.',
      ...(find('material', from.id)?.form === 'solid' ? ['Warm it a little if it does not become clear.'] : []),
      ...lotWords(from, neatG),
      ...lotWords(carrier, carrierG),
    ],
    ask: [
      massField(run, key, { title: `${from.name} weighed`, scale: 'fine' }),
      massField(run, carrierKey(key), { title: `${carrier.name} weighed`, scale: 'fine' }),
    ],
    offers:
      made || amounts.some(({ entry }) => entry === '')
        ? []
        : [
            exactly(
              { [`mass.${key}`]: amounts[0].entry, [`mass.${carrierKey(key)}`]: amounts[1].entry },
              'Both exactly as planned',
            ),
          ],
    done: 'Next',
  };
}

function concentrateStep(run: RunState, making: Making, { pour, place }: { pour: Pour; place: string }): Step {
  const { key, goods, target, again, tooSmall } = pour;
  const grams = onScale(run, target, pour.scale);
  return {
    key,
    say: again ? `Add ‹${grams.text}› more of ${called(goods)}.` : `Weigh ‹${grams.text}› of ${called(goods)}.`,
    more: [
      `${place}.`,
      ...lotWords(goods, pour.stock ? 0 : target),
      ...(again ? [COMES_BACK] : []),
      ...tareWords(run, beside(run, making, pour), pour),
      ...(tooSmall ? [TOO_SMALL] : []),
      ...offWords(run, pour),
    ],
    ask: [massField(run, key, { title: 'The scale shows', scale: pour.scale })],
    ...(isOpen(run, pour) ? {} : { draw: drawComposition }),
    ...waysOn(run, making, { pour, grams }),
    done: 'Weighed',
  };
}

const TOO_SMALL = 'Less than this scale can weigh well.';
const COMES_BACK = 'So that its share comes back.';

/** True while a weighing that went over waits for a choice. */
function isOpen(run: RunState, pour: Pour): boolean {
  return pour.rescue !== null && wayOf(run, pour) === undefined;
}

/** Exactly as asked; or, where a weighing went over, the ways out of it; and for whatever is wrong, to begin again. */
function waysOn(
  run: RunState,
  making: Making,
  { pour, grams }: { pour: Pour; grams: OnScale },
): Pick<Step, 'offers' | 'problem'> {
  const { key, mass, rescue } = pour;
  const again = beginAgainOffer(run, making, pour);
  if (!rescue || !isOpen(run, pour)) {
    const whole =
      mass === null && grams.entry ? [exactly({ [`mass.${key}`]: grams.entry }, `Exactly ${grams.text}`)] : [];
    return { offers: [...whole, ...again] };
  }
  return {
    offers: [...overOffers(making, pour, rescue), ...again],
    problem: 'Too much was added: choose how to continue.',
  };
}

function overOffers({ plan, vessel, syrup }: Making, { key, id, into, goods }: Pour, rescue: Rescue): Offer[] {
  const error = rescue.keep.find((one) => one.id === id)?.error ?? 0;
  const more = formatPlain((rescue.factor - 1) * 100, 2);
  const isMade = into === 'concentrate';
  const litres = plan.drink.litres * vessel.drink * (isMade ? 1 : syrup.factor);
  const way = (words: string, chosen: Way): Offer => ({ words, type: types(fields.over(key), chosen), leave: true });
  return [
    way(`Scale all up by ${more} %, to ${formatPlain(litres * rescue.factor, 4)} L`, 'scale'),
    ...(isMade ? [way(`Keep ${formatPlain(litres, 4)} L; set the rest of the concentrate aside`, 'aside')] : []),
    way(`Keep it: ${formatPlain(error * 100, 2)} % too much ${goods.name}`, 'keep'),
  ];
}

function syrupStep(run: RunState, making: Making, { pour, place }: { pour: Pour; place: string }): Step {
  const { key, goods, target, again, tooSmall } = pour;
  const grams = onScale(run, target, pour.scale);
  const where = pour.into === 'syrup' ? 'Into the syrup' : 'Into the drink';
  return {
    key,
    say: `${where}: ‹${grams.text}›${again ? ' more' : ''} of ${goods.name}.`,
    more: [
      `${place}.`,
      ...(again ? [COMES_BACK] : hintOf(making, goods.id)),
      ...tareWords(run, making.syrup.pours, pour),
      ...(tooSmall ? [TOO_SMALL] : []),
      ...offWords(run, pour),
      ...(isOpen(run, pour) ? doseWords(run, making, pour) : []),
    ],
    ask: [massField(run, key, { title: 'The scale shows', scale: pour.scale })],
    draw: drawDrink,
    ...waysOn(run, making, { pour, grams }),
    done: 'Next',
  };
}

/** What the dose becomes when all is scaled up and there is no more concentrate. */
function doseWords(run: RunState, { plan }: Making, { key }: Pour): string[] {
  const scaled = makingOf(supposing(run, types(fields.over(key), 'scale')));
  const drink = scaled && expectedDrink(scaled);
  if (!drink || doseIn(drink) > 0.99 * plan.drink.mgPerKg) return [];
  return [`Scaled up, the concentrate is not enough: ‹${formatPlain(doseIn(drink), 3)} mg/kg› of the formula.`];
}

/** A word on how it goes in. */
function hintOf({ neededG, there }: Making, id: string): string[] {
  if (id === CONCENTRATE && there > neededG * (1 + 1e-9))
    return ['What is left of it can be kept as a vial at the end.'];
  if (id === CONCENTRATE) return ['All of it; rinse its vessel with some of what it goes into.'];
  return id === SUGAR ? ['Stir until it is clear.'] : [];
}

function exactly(masses: Record<string, string>, words: string): Offer {
  return { words, type: masses, leave: true };
}

/** What is written on its bottle or vial, and its name; of what has no code the name. */
function called({ name, tag }: Goods): string {
  return tag ? `‹${tag}› (${name})` : name;
}

/** Where it comes from, and when that many grams are not there. */
function lotWords({ source }: Goods, grams: number): string[] {
  if (!source) return [];
  const { lot, leftG } = source;
  return leftG === null || leftG >= grams
    ? [lot]
    : [
        lot,
        leftG < 0.0005
          ? 'According to your records it is empty.'
          : `According to your records only ${formatPlain(leftG, 3)} g are left in it.`,
      ];
}

const CHOSEN: Readonly<Record<Way, string>> = {
  scale: 'Chosen: everything is scaled up to it.',
  aside: 'Chosen: the drink stays as planned, the rest of the concentrate is set aside.',
  keep: 'Chosen: it stays so.',
};

/** How far a weighing is off, and what was chosen where it went over. */
function offWords(run: RunState, pour: Pour): string[] {
  const off = offBy(run, pour);
  if (off === 0) return [];
  const chosen = wayOf(run, pour);
  const percent = formatPlain((Math.abs(off) / pour.target) * 100, 2);
  const words = `‹${onScale(run, Math.abs(off), pour.scale).text}› ${off > 0 ? 'over' : 'short'}, ${percent} %.`;
  return [
    off > 0 ? words : `${words} Add to it, and type what the scale shows then.`,
    ...(chosen ? [CHOSEN[chosen]] : []),
  ];
}

/** Grams as a scale shows them: for reading, and as they are typed; '' where it shows nothing of them. */
interface OnScale {
  readonly entry: string;
  readonly text: string;
}

function onScale(run: RunState, grams: number, scale: Pour['scale'] = 'fine'): OnScale {
  const step = stepOf(run, scale);
  return { text: gramsText(grams, step), entry: showsNothing(grams, step) ? '' : typedOnScale(grams, step) };
}
