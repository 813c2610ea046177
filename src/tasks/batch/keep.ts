import { plus } from '../../core/number/measured';
import { Refusal } from '../../core/text/refusal';
import { gaugeForVolumes } from '../../core/liquid/carbonation';
import { celsius } from '../../core/number/units';
import type { Batch, Weighed } from '../../records/kind/batch';
import type { AnyRecord } from '../../records/kind/kinds';
import type { Done } from '../../records/kind/record';
import { find, newRecord } from '../../records/shelf';
import { forFile } from '../../ui/format';
import { textOf, valueOf } from '../engine/fields';
import type { RunState } from '../engine/fold';
import { reasonFor } from '../shared/goingOn';
import { judgeFields } from '../shared/judgeRun';
import type { Judgement } from '../../workshop/drinkable/judging';
import { againstText, sourceWords, stateWords } from '../../workshop/drinkable/limitRules';
import { useOf } from '../../workshop/uses';
import { numberedBatchCode } from '../../workshop/thing/vialCode';
import { dayOfRun } from '../engine/runDay';
import { carrierRefusal, NOT_FOOD } from './carrierBottle';
import { fields } from './fields';
import { leftOverVial, lostIn } from './leftOver';
import { judgeDrink, madeOf, makingOf, type Made, type Making } from './progress';
import type { Pour } from './pour';
import { begunIn } from './begun';
import { slipsOf } from './vessel';
import { takenInAll } from './takings';
import { refusalOfLine, recipeOrNull, spoiltBy } from './drinkAsked';

/** Typed keys that belong to this batch alone, not to the plan. */
const OWN = [
  'although',
  'mass.',
  'over.',
  'lot.',
  'name',
  'notes',
  'again',
  'exactly',
  'what',
  'left',
  'left.',
  'begun',
  'begun.',
];

/** The batch as a record. @throws Refusal when something is missing or not fit for drinks */
export function keepBatch(run: RunState): AnyRecord[] {
  const spoilt = spoiltBy(run);
  if (spoilt) throw new Refusal(spoilt);
  const refusal = recipeOrNull(run)
    ?.lines.map((line) => refusalOfLine(run, line))
    .find((one) => one !== null);
  if (refusal) throw new Refusal(refusal);
  const barred = carrierRefusal(run) ?? (run.typed['spirit.food'] === 'no' ? NOT_FOOD : null);
  if (barred) throw new Refusal(barred);
  const making = makingOf(run);
  const made = making && madeOf(making);
  if (!making || !made) throw new Refusal('Something is not weighed yet: go back and fill in what is missing.');
  const { recipe } = making.plan;
  const again = find('batch', run.typed['again']);
  const lost = lostIn(run, making);
  const judgement = judgeDrink(run, making.plan, made);
  const reason = reasonFor(run, judgement);
  const sources = new Set(making.vessel.pours.flatMap(({ goods }) => goods.source?.id ?? []));
  const record = newRecord('batch', {
    from: [recipe.id, ...sources, ...(again ? [again.id] : [])],
    code: numberedBatchCode(),
    name: valueOf(run, fields.name(usualName(run)))!,
    formula: { id: recipe.id, name: recipe.name, version: recipe.version },
    lines: [...recipe.lines],
    asked: askedOf(run),
    weighed: [...making.vessel.pours, ...making.syrup.pours].map(weighedOf),
    drink: drinkFacts(run, making, made),
    reached: [...made.reached],
    checks: checksOf(judgement),
    jurisdiction: textOf(run, judgeFields.jurisdiction),
    madeOn: dayOfRun(run),
    notes: valueOf(run, fields.notes) ?? '',
    uses: takenInAll(run, making.vessel.pours).map(([id, mass]) => useOf(id, mass, { how: 'weighed' })),
    ...(lost.length > 0 ? { lost } : {}),
    ...(reason === undefined ? {} : { although: reason }),
  });
  const vial = leftOverVial(run, making, record.id);
  return vial ? [{ ...record, uses: without(record.uses, vial.uses) }, vial] : [record];
}

/** Name of a batch until one is typed. */
export function usualName(run: RunState): string {
  const recipe = recipeOrNull(run);
  return recipe ? `${recipe.name}, ${dayOfRun(run)}`.slice(0, 60) : '';
}

function askedOf(run: RunState): Record<string, string> {
  const mine = Object.entries(run.typed).filter(
    ([key]) => !OWN.some((own) => key === own || (own.endsWith('.') && key.startsWith(own))),
  );
  return Object.fromEntries(mine);
}

function weighedOf({ into, goods, target, mass, again }: Pour): Weighed {
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
  const [volumes, atC] = [valueOf(run, fields.volumes) ?? 0, valueOf(run, fields.gasAt) ?? 20];
  const gas = volumes > 0 ? { gas: { volumes, gaugeBar: gaugeForVolumes(volumes, celsius(atC)), atC } } : {};
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
