import { list } from '../../records/shelf';
import type { Option } from '../../ui/controls/field';
import { dropsText } from '../../workshop/dropWords';
import { answer, ask, supposing, types } from '../engine/answers';
import { chips } from '../engine/card';
import type { Field } from '../engine/fields';
import type { RunState } from '../engine/fold';
import { oncePerRun } from '../engine/oncePerRun';
import type { Card, Offer, SlotFacts } from '../engine/task';
import { asked, settled } from './asked';
import { fields, wayOf, type CountStep } from './fields';
import { PickSheet } from './PickSheet';
import { pickedMaterials, pickedStocks, wanted } from './picked';
import { PlanCard } from './PlanCard';
import { notByThemselves, smellOnlyOf } from './planInstance';
import { adviceOf, diluteOffer } from './nextVial';
import { percent, plansOf, targetsOf, type NoPlan, type Plans } from './plans';
import { targetsText, type Target } from './rounds';
import { sizeAsked, SIZES, typicalText } from './size';
import { stockOf, stocksOnHand } from './stock';

/** All of a count at once: what is counted, as how many drops, into which vial and what for. */
export function cardStep(run: RunState): CountStep {
  const now = settled(run);
  const step = wayOf(now) === 'hand' ? handCard(run, now) : planCard(run, now);
  return { ...step, cautions: ['Oils and alcohol are flammable: no flames, open a window.'] };
}

/** What the main button says: the first movement of the hand. */
function takes(targets: readonly Target[]): string {
  const [first] = targets;
  return first ? `Take ${stockOf(first.id)?.tag ?? 'the vial'}` : 'Next';
}

/** Vials and drops, said one by one. */
function handCard(run: RunState, now: RunState): CountStep {
  const picked = pickedStocks(now);
  const { way, dropper } = asked(run);
  const size = sizeAsked(run, wanted(now));
  const drops = picked.map(({ id, tag }) => fields.planned(id, `Drops of ${tag}`));
  const items = stocksOnHand().map(({ tag, ...stock }) => ({ ...stock, code: tag }));
  const each = picked.map(({ id, tag }) => `{${fields.planned(id).name}} of ${plain(tag)}`).join(', ');
  return {
    key: 'card',
    say: 'Which vials, and how many drops of each.',
    ask: [way, ...drops, size, dropper],
    card: {
      sentence: `Count {formula}${each ? `: ${each},` : ''} into a {size} vial, with {dropper}`,
      slots: {
        size: { usual: SIZES },
        ...Object.fromEntries(
          picked.map(({ id, tag }) => [
            fields.planned(id).name,
            { missing: `drops of ${tag}`, usual: DROPS, by: 1, ...shownDrops(now, id) } satisfies SlotFacts,
          ]),
        ),
      },
    },
    draw: (walk) => <PickSheet walk={walk} items={items} label="Vials" />,
    told: [['Picked', picked.map(({ tag }) => tag).join(', ') || '–']],
    ...(picked.length === 0 ? { problem: 'Pick at least one vial.', drawnFirst: true } : {}),
    done: takes(wanted(now)),
  };
}

function shownDrops(now: RunState, id: string): SlotFacts {
  const drops = answer(now, fields.planned(id));
  return drops === null ? {} : { shows: dropsText(drops) };
}

const DROPS = chips(['1', '2', '3', '5', '10', '20'], '');

/** A name in a sentence, where { } are slots. */
function plain(words: string): string {
  return words.replace(/[{}]/g, '');
}

/** A formula, or parts of materials: the plan is proposed. */
function planCard(run: RunState, now: RunState): CountStep {
  const typed = wayOf(now) === 'materials';
  const materials = typed ? pickedMaterials(now) : [];
  const isEmpty =
    typed && (materials.length === 0 || materials.some(({ id }) => answer(now, fields.parts(id)) === null));
  const plans = isEmpty || isDrinkOpen(now) || !isHere(run) ? null : plansOf(now);
  const items = list('material').map(({ id, code, name, form }) => ({ id, code, name, what: form }));
  return {
    key: 'card',
    say: 'What is counted, as how many drops, and what for.',
    ask: fieldsOf(run, now, plans),
    rows: asked(run).stocks,
    card: cardOf(run, now, plans),
    draw: (walk) => (
      <>
        {typed && <PickSheet walk={walk} items={items} label="Materials" />}
        {!isEmpty && <PlanCard walk={walk} />}
      </>
    ),
    ...(typed && materials.length === 0 ? { problem: 'Pick at least one material.', drawnFirst: true } : {}),
    ...(plans && !plans.ok ? { problem: plans.why } : {}),
    ...(plans?.ok ? leavingWith(now, plans) : {}),
  };
}

/** Whether the card is in sight: at the pads the curve would be worked out for nothing. */
function isHere({ at }: RunState): boolean {
  return !/^(count|weigh|slip)\./.test(at) && at !== 'truth';
}

/** The plan that is left with, and what is to be said of its vials. */
function leavingWith(now: RunState, { chosen }: Plans): Pick<CountStep, 'types' | 'more' | 'done'> {
  const targets = targetsOf(chosen);
  return {
    types: { ...types(fields.plan, targetsText(targets)), ...types(fields.planError, String(chosen.objective)) },
    more: [...notByThemselves(targets.map(({ id }) => id)), ...typicalText(now, targets)],
    done: takes(targets),
  };
}

/** Whether it goes into one drink of which something is still missing. */
function isDrinkOpen(now: RunState): boolean {
  return (
    answer(now, fields.purpose) === 'drink' &&
    (answer(now, fields.ppm) === null || answer(now, fields.drinkMl) === null)
  );
}

function fieldsOf(run: RunState, now: RunState, plans: Plans | NoPlan | null): Field[] {
  const { way, purpose, ppm, drinkMl, base, most, mix, dropper } = asked(run);
  const parts = wayOf(now) === 'materials' ? pickedMaterials(now) : [];
  return [
    way,
    ...parts.map(({ id, name }) => fields.parts(id, `Parts of ${name}`)),
    ...(plans?.ok ? [pointAsked(plans)] : []),
    ...(isDrink(now) ? [ppm, drinkMl, base] : [sizeAsked(run, plans?.ok ? targetsOf(plans.chosen) : [])]),
    purpose,
    dropper,
    most,
    mix,
  ];
}

function isDrink(now: RunState): boolean {
  return answer(now, fields.purpose) === 'drink';
}

const FAR = 0.5; // our choice: a plan that is further off is no plan for this formula

/** The plans that are worth their drops, each with how far it is off; the one proposed unless another was chosen. */
function pointAsked({ worth, chosen, proposed }: Plans): Field<string> {
  const near = worth.filter((point) => point.objective <= FAR || point === chosen);
  const options = near.map((point): Option => ({
    value: String(point.drops),
    label: dropsText(point.drops),
    hint: `at most ${percent(point.objective)} off${point === proposed ? ' · proposed' : ''}`,
  }));
  return ask(fields.point, { options, preset: String(chosen.drops) });
}

function cardOf(run: RunState, now: RunState, plans: Plans | NoPlan | null): Card<'card'> {
  const { most, mix } = asked(run);
  const parts = wayOf(now) === 'materials' ? pickedMaterials(now) : [];
  const each = parts.map(({ id, name }) => `{${fields.parts(id).name}} of ${plain(name)}`).join(', ');
  const as = plans?.ok ? ' as {point}' : '';
  const into = isDrink(now) ? ' {purpose}: {ppm} in {drinkMl} of {base},' : ' into a {size} vial, {purpose},';
  const refusal = plans && !plans.ok ? refusalOf(now, plans) : {};
  return {
    sentence: `{formula}${each ? `, ${each},` : ''}${as}${into} with {dropper}`,
    slots: {
      formula: refusal,
      point: { beside: [most, mix] },
      size: { usual: SIZES },
      ppm: {
        missing: 'its mg/kg',
        usual: chips(['5', '10', '20', '50'], 'mg/kg'),
      },
      drinkMl: { missing: 'how much drink', usual: DRINKS },
      ...Object.fromEntries(
        parts.map(({ id, name }) => [fields.parts(id).name, { missing: `parts of ${name}`, usual: PARTS, by: 1 }]),
      ),
    },
    ...(plans?.ok ? { advice: adviceFor(now, plans) } : {}),
  };
}

const DRINKS = chips(['100', '200', '250', '330'], 'mL');
const PARTS = chips(['1', '2', '5', '10', '20', '50'], '');

/** What stops the plan, and the one thing that mends it. */
function refusalOf(now: RunState, { componentId, why, remedy }: NoPlan): SlotFacts {
  const barred = componentId === null ? [] : smellOnlyOf(now, componentId);
  const nose = barred.length > 0 ? `${barred.join(', ')}: smell only, so not for a trial that is tasted.` : '';
  const mend: Offer | undefined = componentId === null ? moreDrops(now) : diluteOffer(now, componentId);
  return { wrong: [why, nose, remedy].filter(Boolean).join(' '), ...(mend ? { mend } : {}) };
}

const MOST_DROPS = '300';

/** More drops, where these make it possible. */
const moreDrops = oncePerRun((now: RunState): Offer | undefined => {
  const more = { [fields.most.name]: MOST_DROPS };
  return plansOf(supposing(now, more)).ok ? { words: `Allow ${MOST_DROPS} drops`, type: more } : undefined;
});

/** What more drops would gain, against how well the vials are known; or which new vial would help, where that was asked. */
function adviceFor(now: RunState, plans: Plans): NonNullable<Card<'card'>['advice']> {
  if (answer(now, fields.advice) === 'yes') {
    const { words, offer } = adviceOf(now, plans);
    return { words: words.replace(/[‹›]/g, ''), ...(offer ? { offer } : {}) };
  }
  return {
    words: gainText(plans),
    offer: { words: 'Which new dilution would help?', type: types(fields.advice, 'yes') },
  };
}

function gainText({ worth, chosen, proposed, own }: Plans): string {
  const last = worth.at(-1)!;
  if (chosen.drops > proposed.drops)
    return `${dropsText(proposed.drops)} get within ${percent(proposed.objective)} already; the vials are known to ± ${percent(own)} of what each brings.`;
  if (last === chosen) return `At most ${percent(chosen.objective)} off: more drops gain nothing.`;
  const gain = `${dropsText(last.drops)} get within ${percent(last.objective)}`;
  return own > last.objective
    ? `${gain}, but the vials are only known to ± ${percent(own)} of what each brings.`
    : `${gain}.`;
}
