import { list } from '../../records/shelf';
import { BESIDE_LIMIT, formatMeasured, formatPlain } from '../../ui/format';
import { unknownWords } from '../../workshop/thing/alcohol';
import { outcome } from '../../workshop/attempt';
import { dropsText, offWords } from '../../workshop/dropWords';
import { refusalOfId } from '../../workshop/drinkable/grade';
import { answer, types } from '../engine/answers';
import { chips } from '../engine/card';
import type { Field } from '../engine/fields';
import type { RunState } from '../engine/fold';
import type { Card, CardAnswer, Offer, SlotFacts, Step } from '../engine/task';
import { although, asksWhy, toldWhy } from '../shared/goingOn';
import { asked } from './asked';
import { isWeighed, usedBase } from './drink';
import { drinkSlots } from './drinkSlots';
import { drinkFields, fields, named, ON_SCALE } from './fields';
import { isIn } from './fit';
import { drawSight } from './GlassSight';
import {
  alcoholIsUnknown,
  chosenVial,
  countOf,
  dropperOf,
  dropsOf,
  glassOf,
  massTyped,
  reachedBy,
  targetOf,
  vialOf,
  type Glass,
  type Target,
} from './glass';
import { judgedNow } from './parts';
import { glassResults, reachedResults } from './results';
import { cloudyWords } from './staying';
import { noteSheet, noteTold } from './TastingNote';

const FEW = 3; // our choice: below that one drop more or less is half of it and more
const FAR = 0.1; // our choice: a target missed by more than 10 % is worth another vial
const SIP = 'Taste a sip of the finished drink, never a drop from a vial.';

/** No vial is there to dose from. */
export const noVial: Step = {
  key: 'glass.1',
  say: 'There is no vial on the Shelf yet.',
  more: ['Neat material never goes into a glass: dilute it first.'],
  offers: [{ words: 'Dilute a material', start: { task: 'dilute', typed: {} } }],
  problem: 'Drinks are dosed from vials: make a dilution first.',
};

/** What is known of the glass while dose i falls: all of it, the target, and what the rules say. */
interface Sight {
  readonly glass: Glass | null;
  readonly target: Target | null;
  /** Why there is no glass, or the target cannot be reached. */
  readonly problem: string | null;
  readonly refusal: string | null;
}

/** The whole of a dose on one screen: vial, drink and target as a sentence, the level in the drink with each drop, and what it means. */
export function glassStep(run: RunState, i: number): Step {
  const { value: glass, problem } = outcome(() => glassOf(run, i));
  const { value: target, problem: unreachable } = outcome(() => targetOf(run, i));
  const vial = chosenVial(run, i);
  const refusal = vial ? refusalOfId(vial) : null;
  const sight = { glass, target, problem: problem ?? unreachable, refusal };
  const last = i === countOf(run);
  const judgement = last ? outcome(() => judgedNow(run)).value : null;
  const why = asksWhy(run, judgement);
  const byScale = dropperOf(run, i) === ON_SCALE;
  const counter = named('drops', i);
  const stuck = refusal ?? whyNotYet(run, i, glass) ?? why.problem;
  return {
    key: `glass.${i}`,
    say: 'What goes into the drink.',
    ask: askedOn(run, i),
    rows: rowsOf(run, i),
    card: cardOf(run, i, sight),
    ...(glass && !byScale ? { counting: { counter, target: target?.drops ?? null } } : {}),
    ...(glass ? { results: [...reachedResults(glass), ...glassResults(glass)], ...openIn(glass) } : {}),
    told: [...noteTold(run), ...toldWhy(run, judgement)],
    cautions: [SIP],
    offers: offersOf(run, i),
    done: last ? 'Save' : 'Next vial',
    ...(stuck ? { problem: stuck } : {}),
  };
}

function whyNotYet(run: RunState, i: number, glass: Glass | null): string | undefined {
  if (!glass) return 'The drink is not known yet: fill in what is missing.';
  return isIn(run, i) ? undefined : 'No drop is counted yet.';
}

function openIn(glass: Glass): Pick<Step, 'more'> {
  const unknown = alcoholIsUnknown(glass);
  return unknown.length > 0 ? { more: [unknownWords(unknown)] } : {};
}

/** The questions of the sentence, in its order. */
function askedOn(run: RunState, i: number): Field[] {
  const now = asked(run);
  const { vial, dropper, aim } = now.doses[i - 1]!;
  const byScale = dropperOf(run, i) === ON_SCALE;
  const own = byScale ? [dropper, fields.weighed(i), now.readability] : [aim, dropper];
  if (i > 1) return [vial, ...own];
  const amount = isWeighed(run) ? now.mass : now.volume;
  const hasBases = list('base').length > 0;
  const name = usedBase(run) ? [] : [drinkFields.name];
  return [vial, amount, ...(hasBases ? [now.base] : []), ...name, ...own];
}

/** What else may be answered here: beside a slot, in the tasting note, in the panel of the rules. */
function rowsOf(run: RunState, i: number): Field[] {
  const now = asked(run);
  const { brix, abv, density } = drinkFields;
  const drink = i === 1 ? [now.by, now.slack, ...(usedBase(run) ? [] : [brix, abv, density])] : [];
  return [...drink, now.doses[i - 1]!.aimIn, fields.verdict, fields.liking('liking'), although];
}

function cardOf(run: RunState, i: number, sight: Sight): Card {
  const [vial, dropper, aim, grams] = ['vial', 'dropper', 'aim', 'massG'].map((name) => `{${named(name, i)}}`);
  const amount = isWeighed(run) ? '{base.g}' : '{base.ml}';
  const bases = [...(list('base').length > 0 ? ['{base}'] : []), ...(usedBase(run) ? [] : ['{base.name}'])];
  const into = i === 1 ? `into ${amount} of ${bases.join(', ')}` : 'into the same glass';
  const way =
    dropperOf(run, i) === ON_SCALE ? `with ${dropper} of {readability}: ${grams}` : `target ${aim}, with ${dropper}`;
  return {
    sentence: `${vial} ${into}, ${way}`,
    slots: slotsOf(run, i, sight),
    ...(sight.glass ? { answer: answerOf(run, i, sight.glass, sight.target), under: drawSight(i) } : {}),
    ...adviceOf(run, i, sight),
  };
}

function slotsOf(run: RunState, i: number, { target, problem, refusal }: Sight): Record<string, SlotFacts> {
  const now = asked(run);
  const { aim, aimIn } = now.doses[i - 1]!;
  const tooMuch = target === null && problem !== null && answer(run, aim) !== null;
  return {
    [named('vial', i)]: {
      missing: i === 1 ? 'the vial' : 'the next vial',
      ...(refusal ? { wrong: refusal } : {}),
      ...(isIn(run, i) && !refusal ? { fixed: true } : {}),
    },
    [named('aim', i)]: {
      usual:
        answer(run, aimIn) === 'drops'
          ? chips(['2', '5', '10', '20'], 'drops')
          : chips(['5', '10', '20', '50'], 'mg/kg'),
      beside: [aimIn],
      ...aimShown(run, i, target),
      ...(tooMuch ? { wrong: problem } : {}),
    },
    [named('massG', i)]: { missing: 'what the scale shows' },
    ...drinkSlots(run),
    readability: { usual: chips(['0.1', '0.01', '0.001'], 'g') },
  };
}

/** Without a target one doses by taste; that of a run of the first version that was begun again is its drops. */
function aimShown(run: RunState, i: number, target: Target | null): SlotFacts {
  const { aim, aimIn } = asked(run).doses[i - 1]!;
  const wanted = answer(run, aim);
  if (wanted !== null) return answer(run, aimIn) === 'drops' ? { shows: dropsText(wanted) } : {};
  const then = answer(run, fields.then(i));
  return { shows: then !== null && target ? dropsText(target.drops) : 'by taste' };
}

/** The level in the drink, as large as it can be read from afar, and the drops to go. */
function answerOf(run: RunState, i: number, glass: Glass, target: Target | null): CardAnswer {
  const { vial, drop } = glass.dosings.at(-1)!;
  const { mgPerKg, mgPerL } = reachedBy(vial, glass.dose);
  const { value, uncertainty } = formatMeasured(mgPerKg, BESIDE_LIMIT);
  const drops = dropsOf(run, i);
  const fallen = drop === null ? 'weighed in' : fallenText(drops, target);
  const mg = drop && formatPlain(drop.mgPerDrop.value, 2);
  const weighs = drop ? (drop.calibrated ? ` · a drop: ${mg} mg, weighed` : ` · a drop: ${mg} mg, typical`) : '';
  const perLitre = `${formatMeasured(mgPerL, BESIDE_LIMIT).value} mg/L${weighs}`;
  return {
    big: value,
    lines: [
      ['mg/kg', uncertainty && `± ${uncertainty}`, fallen].filter(Boolean).join(' '),
      target && drop && drops === 0 ? comesTo(target) : perLitre,
    ],
    how: 0,
  };
}

/** '3 drops give 5.6 mg/kg, 12 % over' */
function comesTo({ drops, mgPerKg, error }: Target): string {
  const off = error === null ? '' : `, ${offWords(error)}`;
  return `${dropsText(drops)} give ${formatPlain(mgPerKg, 2)} mg/kg${off}`;
}

function fallenText(drops: number, target: Target | null): string {
  const fallen = `with ${dropsText(drops)}`;
  if (!target) return drops === 0 ? 'before the first drop' : fallen;
  if (drops === 0) return `now, ${target.drops} to go`;
  if (drops === target.drops) return `${fallen}, as planned`;
  return drops < target.drops
    ? `${fallen}, ${target.drops - drops} to go`
    : `${fallen}, ${drops - target.drops} too many`;
}

/** A drop decides too much where few are wanted; or the drink turns cloudy. */
function adviceOf(run: RunState, i: number, { glass, target }: Sight): Pick<Card, 'advice'> {
  const drops = dropsOf(run, i);
  const isRough = target && drops === 0 && (target.drops < FEW || Math.abs(target.error ?? 0) > FAR);
  if (isRough && target.error !== null)
    return { advice: { words: 'One drop decides here: a weaker vial would come nearer.' } };
  const then = drops === 0 && target ? outcome(() => glassOf(run, i, target.drops)).value : glass;
  const words = then && cloudyWords(then);
  return words ? { advice: { words } } : {};
}

/** Before the first drop a series; then a note on it, and another vial into the same glass. */
function offersOf(run: RunState, i: number): Offer[] {
  const begun = isIn(run, i);
  const last = i === countOf(run);
  const note: Offer = { words: 'Tasting note', sheet: noteSheet };
  const other: Offer = { words: 'Another vial', type: types(fields.more(i), 'yes'), leave: true };
  const noOther: Offer = { words: 'No other vial', type: types(fields.more(i - 1), 'no') };
  const series: Offer = { words: 'Series', type: types(fields.mode, 'ladder') };
  if (begun || massTyped(run, i)) return last ? [note, other] : [note];
  if (i > 1) return last ? [noOther] : [];
  return last && vialOf(run, 1) && dropperOf(run, 1) !== ON_SCALE ? [series] : [];
}
