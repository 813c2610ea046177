import {
  daysToRing,
  emulsionFor,
  leastDosage,
  oilPhaseDensity,
  riseWithin,
  type Emulsion,
  type EmulsionTarget,
  type Rise,
} from '../../../core/drink/emulsion';
import { exact } from '../../../core/number/measured';
import { sucroseViscosity } from '../../../core/liquid/sucroseViscosity';
import { gram, gramPerMl, millilitre } from '../../../core/number/units';
import { find } from '../../../records/shelf';
import { weightingAgents } from '../../../tables/emulsion/weightingAgents';
import { formatPlain, formatTyped } from '../../../ui/format';
import type { Option } from '../../../ui/controls/field';
import { answer, ask } from '../../engine/answers';
import type { Field } from '../../engine/fields';
import type { RunState } from '../../engine/fold';
import { asBefore } from '../../engine/lastTime';
import { judge } from '../../shared/judgeRun';
import { asked, ofThisRecipe } from './asked';
import { timesBefore } from './before';
import { dissolving } from './dissolving';
import { fields } from './fields';
import { EMULSION_WATER, pure, type Goods, type Planned } from './goods';
import { emulsifierOf, isOfOneVessel, phasesOf, ratioField } from './phases';
import type { Basis, Plan } from './planParts';
import { Refusal } from '../../../core/text/refusal';
import { outcome } from '../../../workshop/attempt';
import { oncePerRun } from '../../engine/oncePerRun';
import { waterBottleOf } from './waterBottle';
import { answered, drinkOf } from './drinkAsked';

/** Density of an oil no one has looked up, g/mL. Typical, not confirmed. */
const TYPICAL_OIL = 0.9;
/** Half the range of a density: of what was not read anywhere, of oils from lot to lot, of the drink with its acid. g/mL, our choice. */
const [NOT_READ, LOTS, UNSEEN] = [0.01, 0.005, 0.002];

/** True when the concentrate becomes an emulsion: chosen, or because something stays cloudy. */
export function isEmulsion(run: RunState): boolean {
  return answer(run, makeField(run)) === 'emulsion';
}

/** Solution or emulsion: as last time for this formula, else by what stays dissolved. */
export function makeField(run: RunState): Field<'clear' | 'emulsion'> {
  return asBefore(ofThisRecipe(run), fields.make, timesBefore(run).same, usualMake(run));
}

/** What is there until it is chosen. */
function usualMake(run: RunState): 'clear' | 'emulsion' {
  const isStrong = (outcome(() => drinkOf(run)).value?.abv ?? 0) > emulsifierOf(run).abv;
  return dissolving(run)?.verdict === 'stays cloudy' && !isStrong ? 'emulsion' : 'clear';
}

/** A weighting agent and its highest amount in this drink, mg/L; null where no rule names one. */
export interface AgentOnHand {
  readonly id: string;
  readonly name: string;
  readonly cas: string;
  readonly densityGPerMl: number;
  /** Half the range of its density, g/mL. */
  readonly halfGPerMl: number;
  readonly capMgPerL: number | null;
  readonly words: string;
}

/** Weighting agents with what the chosen rules allow of them in this drink. */
const agentsFor = oncePerRun((run: RunState): AgentOnHand[] => {
  const drink = drinkOf(run);
  if (!drink) return [];
  return weightingAgents.map(({ name, cas, low, high, level }) => {
    const finished = { abv: drink.abv, density: drink.densityGPerMl };
    const part = { id: `agent-${cas[0]}`, name, cas: cas[0]!, mgPerKg: exact(1) };
    const findings = judge(answered(run, true), [part], finished)?.findings ?? [];
    const caps = findings.flatMap(({ check, max, unit }) =>
      check === 'limit' && max !== null ? [unit === 'mg/L' ? max : max * drink.densityGPerMl] : [],
    );
    const cap = caps.length > 0 ? Math.min(...caps) : null;
    const density = `${formatPlain((low + high) / 2)} g/mL${level === 'memory' ? ', typical, not confirmed' : ''}`;
    const allowed =
      cap === null
        ? 'no highest amount was found for it: not offered'
        : cap === 0
          ? 'not allowed in this kind of drink'
          : `at most ${formatPlain(cap, 3)} mg/L`;
    return {
      id: part.id,
      name,
      cas: cas[0]!,
      densityGPerMl: (low + high) / 2,
      halfGPerMl: Math.max((high - low) / 2, level === 'memory' ? NOT_READ : 0),
      capMgPerL: cap,
      words: `${density}; ${allowed}`,
    };
  });
});

/** The weighting agent: as last time for this formula while the rules allow it. */
export function agentField(run: RunState): Field<string> {
  return asBefore(ofThisRecipe(run), ask(fields.agent, { options: agentOptions(run) }), timesBefore(run).same);
}

function agentOptions(run: RunState): Option[] {
  const usable = agentsFor(run).filter(({ capMgPerL }) => capMgPerL !== null && capMgPerL > 0);
  return [
    { value: 'none', label: 'None', short: 'no weighting agent', hint: 'droplet size alone holds it' },
    ...usable.map(({ id, name, words }) => ({ value: id, label: name, hint: words })),
  ];
}

/** Why the other agents are not offered, a sentence each. */
export function agentsLeftOut(run: RunState): string[] {
  return agentsFor(run)
    .filter(({ capMgPerL }) => !capMgPerL)
    .map(({ name, words }) => `${name}: ${words}.`);
}

/** Density of the oils together; worked out from those of the Shelf. */
export function oilField(run: RunState, { lines }: Pick<Basis, 'lines'>): Field<number> {
  const { gPerMl, unknown } = usualOil(phasesOf(run, lines).oil);
  const help = unknown.length > 0 ? `0.9 was taken for ${unknown.join(', ')}: typical, not confirmed.` : '';
  return asBefore(ofThisRecipe(run), ask(fields.oilDensity, { help }), [], formatTyped(gPerMl, 3));
}

function usualOil(lines: readonly Planned[]): { gPerMl: number; unknown: string[] } {
  const known = (goods: Goods) =>
    (goods.source?.bottle?.density ?? find('material', goods.id)?.density)?.gPerMl ?? null;
  if (lines.length === 0) return { gPerMl: TYPICAL_OIL, unknown: [] };
  const density = oilPhaseDensity(
    lines.map(({ goods, mass }) => ({ mass: gram(mass), density: gramPerMl(known(goods) ?? TYPICAL_OIL) })),
  );
  return {
    gPerMl: density,
    unknown: lines.filter(({ goods }) => known(goods) === null).map(({ goods }) => goods.name),
  };
}

/** What the emulsion is to be; null until it is known. @throws Refusal where nothing in the formula is oil */
function targetOf(run: RunState, { lines, drink, gramsPerL, ml }: Basis): EmulsionTarget | null {
  const oil = answer(run, oilField(run, { lines }));
  const gumRatio = answer(run, ratioField(run));
  if (oil === null || gumRatio === null) return null;
  const { oilG, besideG } = phasesOf(run, lines);
  if (oilG === 0) throw new Refusal('nothing in the formula is oil: it needs no emulsion');
  const agent = agentOf(run);
  const { inWater, oil: mostOil } = emulsifierOf(run);
  return {
    oil: { mass: gram(oilG), density: gramPerMl(oil) },
    beside: gram(besideG),
    agent: agent?.capMgPerL ? { density: gramPerMl(agent.densityGPerMl), capMgPerL: agent.capMgPerL } : null,
    drink: { volume: millilitre(ml), density: gramPerMl(drink.densityGPerMl) },
    gramsPerL,
    gumRatio,
    ...(isOfOneVessel(run) ? {} : { limits: { inWater, oil: mostOil } }),
  };
}

function agentOf(run: RunState): AgentOnHand | undefined {
  return agentsFor(run).find(({ id }) => id === answer(run, agentField(run)));
}

/** The dosage from which on the emulsion can be made, g/L, rounded up to two digits; null until it is known. */
export function dosageThatWorks(run: RunState, basis: Basis): number | null {
  const { value: target } = outcome(() => targetOf(run, basis));
  if (!target) return null;
  const least = leastDosage(target);
  const digits = 10 ** (Math.floor(Math.log10(least)) - 1);
  return Number((Math.ceil(least / digits - 1e-9) * digits).toPrecision(2));
}

/** The emulsion and its goods; null until it is known. @throws Refusal when the dosage has no room for it */
export function emulsionGoods(
  run: RunState,
  basis: Basis,
): (Pick<Plan, 'concentrate'> & { emulsion: Emulsion }) | null {
  const target = targetOf(run, basis);
  if (!target) return null;
  const made = emulsionFor(target);
  const [agent, { id, name, cas }] = [agentOf(run), emulsifierOf(run)];
  const extra = [
    ...(agent ? [{ goods: pure(agent.id, agent.name, { cas: agent.cas, beside: 'carrier' }), mass: made.agent }] : []),
    { goods: pure(id, name, { cas, beside: 'carrier' }), mass: made.gum },
    {
      goods: { ...pure('water', 'water of the emulsion'), id: EMULSION_WATER, source: waterBottleOf(run) },
      mass: made.water,
    },
  ];
  return { concentrate: [...basis.lines, ...extra.filter(({ mass }) => mass > 0)], emulsion: made };
}

/** How fast the droplets rise, mm a day (below 0 they sink), as far as densities are known, and days until a ring begins to show. */
export function creaming(run: RunState, { emulsion, drink, concentrate }: Plan): (Rise & { days: Rise }) | null {
  const diameterUm = answer(run, fields.d90) ?? answer(run, asked(run).droplet);
  if (!emulsion || diameterUm === null) return null;
  const agent = agentOf(run);
  const oilG = phasesOf(
    run,
    concentrate.filter(({ goods }) => goods.source !== null && goods.id !== EMULSION_WATER),
  ).oilG;
  const share = emulsion.agent / (emulsion.agent + oilG);
  const rise = riseWithin({
    diameterUm,
    oil: { value: emulsion.oilPhase, half: share * (agent?.halfGPerMl ?? 0) + (1 - share) * LOTS },
    drink: { value: drink.densityGPerMl, half: UNSEEN },
    viscosityMPaS: sucroseViscosity(drink.make.brix),
  });
  const fastest = Math.max(Math.abs(rise.low), Math.abs(rise.high));
  const slowest = rise.low < 0 && rise.high > 0 ? 0 : Math.min(Math.abs(rise.low), Math.abs(rise.high));
  return { ...rise, days: { low: daysToRing(fastest), high: daysToRing(slowest) } };
}
