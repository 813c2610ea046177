import { formatMeasured, formatPlain } from '../../ui/format';
import { attempt, Refused } from '../../workshop/attempt';
import type { Supply } from '../../records/kind/supply';
import { list } from '../../records/shelf';
import { labelSays } from '../../workshop/drinkable/grade';
import { answer, ask, supposing, types } from '../engine/answers';
import { chips } from '../engine/card';
import type { Field } from '../engine/fields';
import type { RunState } from '../engine/fold';
import type { Card, SlotFacts } from '../engine/task';
import { asked, settled } from './asked';
import { cautionsFor, smellOnlyReason } from './cautions';
import { drawVial } from './drawVial';
import { strengthResult } from './ending';
import { fields, foodField, ON_SCALE, SIZES, type DiluteStep } from './fields';
import { madeOf } from './made';
import { inMl, isByDrops, liquidOf, orderOf, strengthOf, targetOf, type Order } from './making';
import { isNothing, NOTHING, pourAmount, takenText } from './pouring';
import { asPlanned } from './rack';
import { neverFitOwn, ownAlcohol, ownSolvent, solventBottleOf, solventOf, sourceOf } from './source';
import { wayDown, type WayDown } from './wayDown';
import { adviceOf } from './advice';
import { underSentence } from '../shared/underSentence';
import { codeAsked, inAlready, twinWords, worthAWord } from './worthAWord';

/** All of a dilution at once. `nextKey` is the step that the hand goes on to. */
export function cardStep(run: RunState, nextKey: (run: RunState) => string | undefined): DiluteStep {
  const now = settled(run);
  const order = attempt(() => orderOf(now));
  const known = order instanceof Refused ? null : order;
  const better = known?.plan.tooLittle && answer(now, fields.direct) !== 'yes' ? wayDown(now, known) : null;
  const isNew = answer(now, fields.source) === 'new' && !sourceOf(now);
  const twin = known && !better ? twinWords(now, known) : null;
  const next = isNew ? 'new-material' : nextKey(better ? supposing(run, better.types) : run);
  return {
    key: 'card',
    say: 'What is diluted, how strong, and in what.',
    ask: [...fieldsOf(run, now), ...(known && !better ? codeAsked(now, known) : [])],
    card: cardOf(run, now, { order: known, better }),
    ...(twin ? { draw: underSentence(twin) } : {}),
    ...(known ? { results: [strengthResult(known, madeOf(asPlanned(now, known), known))] } : {}),
    ...(known && isNothing(known) && !better ? { problem: NOTHING } : {}),
    more: [...(known ? worthAWord(now, known) : []), ...inAlready(now)],
    ...(known ? { cautions: cautionsFor(known.solvent, known.source.drop.strength === 1, known.source.cautions) } : {}),
    types: { ...better?.types, ...types(fields.planned, 'yes') },
    ...(next ? { next: next as DiluteStep['key'] } : {}),
    ...(list('bottle').length > 1 && !isNew && !isGradeOpen(now)
      ? {
          offers: [
            {
              words: 'More vials',
              type: { ...types(fields.picking, 'yes'), ...types(fields.planned, 'yes') },
              go: 'set',
            },
          ],
        }
      : {}),
    done: isNew ? 'Add the bottle' : (now.drops['source'] ?? 0) > 0 ? 'Count on' : doneWords(now, known, better),
  };
}

function doneWords(run: RunState, order: Order | null, better: WayDown | null): string {
  if (better) return better.button;
  if (!order) return 'Next';
  const how = answer(run, fields.measure);
  if (how === 'shoulder') return 'Fill to the shoulder';
  return `${how === 'scale' ? 'Weigh' : 'Pour'} ${pourAmount(run, order)}`;
}

/** The questions of the card, in the order of its sentence. */
function fieldsOf(run: RunState, now: RunState): Field[] {
  const { source, strength, size, solvent, measure, dropper, readability } = asked(run);
  const own = answer(now, fields.solvent) === 'new' ? [fields.solventName, ...alcoholFields(now)] : [];
  const solid = sourceOf(now)?.solid ?? false;
  return [
    source,
    strength,
    size,
    solvent,
    ...own,
    ...(isGradeAsked(now) ? [gradeAsked(now)] : []),
    measure,
    ...(solid ? [] : [dropper]),
    ...(isScaleUsed(now) ? [readability] : []),
  ];
}

/** Whether it is alcohol, and how strong; then its density follows, unless it is typed. */
function alcoholFields(now: RunState): Field[] {
  const abv = ownAlcohol(now);
  const help = 'Empty: that of ethanol and water. Of a liqueur it is on no label: weigh 10 mL.';
  return [
    fields.solventAlcohol,
    ...(answer(now, fields.solventAlcohol) === 'yes' ? [fields.solventAbv] : []),
    abv !== null && abv > 0 ? ask(fields.spiritDensity, { help }) : fields.solventDensity,
  ];
}

/** What is never fit for drinks refuses to be called so. */
function gradeAsked(now: RunState): Field<'yes' | 'no'> {
  const never = answer(now, fields.solvent) === 'new' ? neverFitOwn(now) : null;
  return ask(foodField(now), { refuse: (said) => (said === 'yes' ? never : null) });
}

/** Whether someone has to say if the solvent is food grade: no bottle of the Shelf does, and there is one that is. */
function isGradeAsked(now: RunState): boolean {
  const own = answer(now, fields.solvent) === 'new';
  return own || (!!solventOf(now)?.foodPossible && isLabelSilent(solventBottleOf(now)));
}

/** Whether the label of the bottle, if one was chosen, does not say it. */
function isLabelSilent(bottle: Supply | undefined): boolean {
  return bottle === undefined || labelSays(bottle) === null;
}

/** Whether the grade of the solvent is still to be said. */
function isGradeOpen(now: RunState): boolean {
  return isGradeAsked(now) && answer(now, gradeAsked(now)) === null;
}

function isScaleUsed(now: RunState): boolean {
  return answer(now, fields.measure) === 'scale' || !isByDrops(now, sourceOf(now)?.solid ?? false);
}

function cardOf(
  run: RunState,
  now: RunState,
  { order, better }: { order: Order | null; better: WayDown | null },
): Card<DiluteStep['key']> {
  const solid = sourceOf(now)?.solid ?? false;
  const abv = answer(now, fields.solventAlcohol) === 'yes' ? ' of {solvent.abv}' : '';
  const own =
    answer(now, fields.solvent) === 'new' ? ` called {solvent.name}, {solvent.alcohol}${abv}, {solvent.density}` : '';
  const gradeSlot = isGradeAsked(now) ? `, {${foodField(now).name}}` : '';
  const drops = solid
    ? ''
    : answer(now, fields.dropper) === ON_SCALE
      ? ', weighed on {dropper}'
      : ', dropped from {dropper}';
  const scale = isScaleUsed(now) ? ', scale {readability}' : '';
  const code = order && !better && codeAsked(now, order).length > 0 ? `, labelled {${fields.code.name}}` : '';
  return {
    sentence: `{bottle} to {strength} in a {size} vial of {solvent}${own}${gradeSlot}, measured with {measure}${drops}${scale}${code}`,
    slots: slotsOf(run, now),
    ...(order
      ? {
          answer: answerOf(now, order),
          picture: () => drawVial(now, order, { size: 148, full: true, ungraded: isGradeOpen(now) }),
        }
      : {}),
    ...(order ? adviceOf(now, order, better) : {}),
  };
}

function slotsOf(run: RunState, now: RunState): Record<string, SlotFacts> {
  const { basis } = asked(run);
  const source = sourceOf(now);
  const tried =
    source && strengthOf(now) !== null ? attempt(() => targetOf(now, source, liquidOf(source, solventOf(now)))) : null;
  return {
    bottle: {
      missing: 'what to dilute',
      ...(source && answer(now, fields.source) === 'new' ? { shows: source.tag } : {}),
    },
    strength: {
      usual: answer(now, basis)?.startsWith('%') ? chips(['0.01', '0.1', '1', '5', '10'], '%') : [],
      beside: [basis],
      ...(tried instanceof Refused ? { wrong: tried.problem } : {}),
    },
    size: { usual: chips(SIZES.map(String), 'mL') },
    solvent: { missing: 'the solvent' },
    'solvent.name': { missing: 'its name', beside: [fields.solventCas, fields.solventFlash] },
    'solvent.alcohol': { missing: 'alcohol or not' },
    'solvent.abv': { missing: 'its % vol' },
    'solvent.density': { missing: 'its density', ...densityShown(now) },
    [foodField(now).name]: { missing: 'food grade or not', pills: true, asks: 'Say whether it is food grade' },
    [fields.code.name]: { missing: 'its code' },
    readability: { usual: chips(['0.1', '0.01', '0.001'], 'g') },
  };
}

/** The density that follows from its alcohol, where none was typed. */
function densityShown(now: RunState): SlotFacts {
  const abv = ownAlcohol(now);
  const own = answer(now, fields.solventDensity) === null && abv !== null && abv > 0 ? ownSolvent(now) : null;
  return own ? { shows: `${formatPlain(own.density.gPerMl)} g/mL` } : {};
}

/** What the hand takes, in how much solvent, and what that gives. */
function answerOf(now: RunState, order: Order): NonNullable<Card['answer']> {
  const { shown } = madeOf(asPlanned(now, order), order);
  const { value, uncertainty } = formatMeasured(shown, { most: 3 });
  const reason = smellOnlyReason(order.solvent, order.source);
  return {
    big: takenText(order),
    lines: [
      `in ${formatPlain(inMl(order, order.plan.solventG), 3)} mL · gives ${value} ± ${uncertainty} ${order.basis}`,
    ],
    ...(isGradeOpen(now)
      ? {}
      : { grade: { words: reason === null ? 'Fit for drinks' : 'Smell only', barred: reason !== null } }),
    how: 0,
  };
}
