import { plus } from '../../core/number/measured';
import { Refusal } from '../../core/text/refusal';
import type { Batch, Weighed } from '../../records/kind/batch';
import type { AnyRecord } from '../../records/kind/kinds';
import type { Done } from '../../records/kind/record';
import { newRecord } from '../../records/shelf';
import { forFile } from '../../ui/format';
import { answer } from '../engine/answers';
import { askedIn } from '../engine/lastTime';
import type { RunState } from '../engine/fold';
import { reasonFor } from '../shared/goingOn';
import { judgeFields } from '../shared/judgeRun';
import { asked } from './plan/asked';
import { madeAgain } from './plan/before';
import type { Judgement } from '../../workshop/drinkable/judging';
import { againstText, sourceWords, stateWords } from '../../workshop/drinkable/limitRules';
import { useOf } from '../../workshop/uses';
import { numberedBatchCode } from '../../workshop/thing/vialCode';
import { dayOfRun } from '../engine/runDay';
import { contentOf, OWN_ACID } from './plan/goods';
import { fields } from './plan/fields';
import { leftOverVial, lostIn } from './leftOver';
import { judgeDrink, madeOf, makingOf, type Made, type Making } from './progress';
import type { Pour } from './vessel/pour';
import { begunIn } from './plan/begun';
import { gaugeIn } from './keeping/bottle';
import { keepingFacts } from './keeping/kept';
import { keptOfOneBatch, keptWithFormula } from './plan/keepFields';
import { withRingTrial } from './ringTrial';
import { slipsOf } from './vessel/vessel';
import { takenInAll } from './takings';
import { spoiltBy } from './plan/drinkAsked';
import { recipeOrNull } from './plan/recipe';
import { refusalOf } from './recipeStep';

/** Names of the answers that are the plan: what a repeat begins with. Whether spirit and carrier are fit for drinks is asked each time: it may be another bottle. */
export const repeats = [
  ...['what', 'base', 'litres', 'dose', 'brix', 'sugar.', 'abv', 'spirit', 'throw.', 'acid', 'acidity'],
  ...['benzoate', 'sorbate', 'dosage', 'spare', 'make', 'into', 'carrier', 'oil', 'agent', 'gum', 'trait.'],
  ...['droplet', 'gas', 'gas.'],
  ...['own.', 'loss', 'vessel'],
  ...['fine', 'scatter', 'tolerance', 'coarse', 'jurisdiction', 'portion', 'body'],
  ...keptWithFormula,
];

/** Names of the answers that the batch keeps: what the next one begins with, and what was told to the rules. */
const FOOD = ['spirit.food', 'spirit.food.', 'carrier.food', 'carrier.food.'];
const KEPT = [...repeats.slice(1), ...keptOfOneBatch, ...FOOD, 'd90', 'cert.'];

/** The batch as a record. @throws Refusal when something is missing or not fit for drinks */
export function keepBatch(run: RunState): AnyRecord[] {
  const spoilt = spoiltBy(run);
  if (spoilt) throw new Refusal(spoilt);
  const barred = refusalOf(run);
  if (barred) throw new Refusal(barred);
  const making = makingOf(run);
  const made = making && madeOf(making);
  if (!making || !made) throw new Refusal('Something is not weighed yet: go back and fill in what is missing.');
  const { recipe } = making.plan;
  const again = madeAgain(run);
  const lost = lostIn(run, making);
  const judgement = judgeDrink(run, making.plan, made);
  const reason = reasonFor(run, judgement);
  const pours = [...making.vessel.pours, ...making.syrup.pours];
  const sources = new Set(pours.flatMap(({ goods }) => goods.source?.id ?? []));
  const record = newRecord('batch', {
    from: [recipe.id, ...sources, ...(again ? [again.id] : [])],
    code: numberedBatchCode(),
    name: answer(run, fields.name(usualName(run)))!,
    formula: { id: recipe.id, name: recipe.name, version: recipe.version },
    lines: [...recipe.lines],
    asked: askedIn(run, KEPT),
    weighed: pours.map(weighedOf),
    drink: drinkFacts(run, making, made),
    reached: [...made.reached],
    checks: checksOf(judgement),
    jurisdiction: answer(run, judgeFields.jurisdiction)!,
    madeOn: dayOfRun(run),
    notes: answer(run, fields.notes) ?? '',
    ...keepingFacts(run, made.mixture, made.litres.value),
    uses: takenInAll(run, pours).map(([id, mass]) => useOf(id, mass, { how: 'weighed' })),
    ...(lost.length > 0 ? { lost } : {}),
    ...(reason === undefined ? {} : { although: reason }),
  });
  const watched = withRingTrial(run, making, record);
  const vial = leftOverVial(run, making, record.id);
  return vial ? [{ ...watched, uses: without(record.uses, vial.uses) }, vial] : [watched];
}

/** Name of a batch until one is typed. */
export function usualName(run: RunState): string {
  const recipe = recipeOrNull(run);
  return recipe ? `${recipe.name}, ${dayOfRun(run)}`.slice(0, 60) : '';
}

function weighedOf({ into, goods, target, mass, again, stock }: Pour): Weighed {
  const name = again ? `${goods.name}, more` : goods.name;
  const { source } = goods;
  return {
    into,
    id: goods.id,
    name,
    source: source?.id ?? null,
    lot: source?.lot ?? '',
    plannedG: target,
    massG: mass!,
    ...(stock ? { share: stock.share.value } : {}),
    ...(goods.own ? { own: true as const } : {}),
    ...(contentOf(goods, OWN_ACID) > 0 ? { acid: contentOf(goods, OWN_ACID) } : {}),
  };
}

/** What the batch took, less what went into the vial: nothing is counted twice. */
function without(uses: Batch['uses'], others: Batch['uses']): Batch['uses'] {
  const massOf = (id: string) => others.reduce((sum, use) => sum + (use.id === id ? use.massG : 0), 0);
  return uses.map((use) => ({ ...use, massG: use.massG - massOf(use.id) }));
}

/** Weighings that went over, and what was chosen then. */
export function happenedIn(run: RunState): Pick<Done, 'slips'> {
  const making = makingOf(run);
  const pours = making ? [...making.vessel.pours, ...making.syrup.pours] : [];
  const slips = [...begunIn(run).flatMap((begun) => begun.slips), ...slipsOf(run, pours)];
  return slips.length > 0 ? { slips: slips.map((slip) => ({ ...slip, unit: 'g' as const })) } : {};
}

function drinkFacts(
  run: RunState,
  { plan }: Making,
  { litres, brix, abv, unknown, densityGPerMl }: Made,
): Batch['drink'] {
  const [volumes, atC] = [answer(run, asked(run).volumes) ?? 0, answer(run, asked(run).gasAt) ?? 20];
  const gas = volumes > 0 ? { gas: { volumes, gaugeBar: gaugeIn(run, volumes, atC), atC } } : {};
  const known = unknown.length > 0 ? { abvUnknown: true as const } : {};
  return { litres: plus(litres), brix, abv, ...known, densityGPerMl, emulsion: plan.emulsion !== null, ...gas };
}

function checksOf(judgement: Judgement | null): Batch['checks'] {
  const findings = judgement?.findings ?? [];
  return findings.map(({ check, state, what, amount, max, unit, figure }) => ({
    state,
    what,
    words: [
      stateWords[state].words,
      ...(state === 'unknown' ? [] : [forFile(() => againstText({ amount, max, unit }))]),
    ].join(': '),
    source: figure ? sourceWords(check, figure) : '',
  }));
}
