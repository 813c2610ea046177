import { daysToRing, emulsionFor, oilPhaseDensity, risePerDay, type Emulsion } from '../../../core/drink/emulsion';
import { exact } from '../../../core/number/measured';
import { sucroseViscosity } from '../../../core/liquid/sucroseViscosity';
import { gram, gramPerMl, millilitre } from '../../../core/number/units';
import { find } from '../../../records/shelf';
import { gumArabic } from '../../../tables/syrupAdditives';
import { weightingAgents } from '../../../tables/weightingAgents';
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
import { EMULSION_WATER, massOf, pure, type Goods, type Planned } from './goods';
import type { Basis, Plan } from './planParts';
import { oncePerRun } from '../../engine/oncePerRun';
import { waterBottleOf } from './waterBottle';
import { answered, drinkOf } from './drinkAsked';

/** Density of an oil no one has looked up, g/mL. Typical, not confirmed. */
const TYPICAL_OIL = 0.9;

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
  return dissolving(run)?.verdict === 'stays cloudy' ? 'emulsion' : 'clear';
}

/** A weighting agent and its highest amount in this drink, mg/L; null where no rule names one. */
export interface AgentOnHand {
  readonly id: string;
  readonly name: string;
  readonly cas: string;
  readonly densityGPerMl: number;
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
  const { gPerMl, unknown } = usualOil(lines);
  const help = unknown.length > 0 ? `0.9 was taken for ${unknown.join(', ')}: typical, not confirmed.` : '';
  return asBefore(ofThisRecipe(run), ask(fields.oilDensity, { help }), [], formatTyped(gPerMl, 3));
}

function usualOil(lines: readonly Planned[]): { gPerMl: number; unknown: string[] } {
  const known = (goods: Goods) =>
    (goods.source?.bottle?.density ?? find('material', goods.id)?.density)?.gPerMl ?? null;
  const density = oilPhaseDensity(
    lines.map(({ goods, mass }) => ({ mass: gram(mass), density: gramPerMl(known(goods) ?? TYPICAL_OIL) })),
  );
  return {
    gPerMl: density,
    unknown: lines.filter(({ goods }) => known(goods) === null).map(({ goods }) => goods.name),
  };
}

/** The emulsion and its goods; null until it is known. @throws Refusal when the dosage has no room for it */
export function emulsionGoods(
  run: RunState,
  basis: Basis,
): (Pick<Plan, 'concentrate'> & { emulsion: Emulsion }) | null {
  const { lines, drink, gramsPerL, ml } = basis;
  const oil = answer(run, oilField(run, basis));
  const gumRatio = answer(run, asked(run).gum);
  if (oil === null || gumRatio === null) return null;
  const agent = agentsFor(run).find(({ id }) => id === answer(run, agentField(run)));
  const made = emulsionFor({
    oil: { mass: gram(massOf(lines)), density: gramPerMl(oil) },
    agent: agent?.capMgPerL ? { density: gramPerMl(agent.densityGPerMl), capMgPerL: agent.capMgPerL } : null,
    drink: { volume: millilitre(ml), density: gramPerMl(drink.densityGPerMl) },
    gramsPerL,
    gumRatio,
  });
  const extra = [
    ...(agent ? [{ goods: pure(agent.id, agent.name, { cas: agent.cas, beside: 'carrier' }), mass: made.agent }] : []),
    { goods: pure(gumArabic.id, gumArabic.name, { cas: gumArabic.cas, beside: 'carrier' }), mass: made.gum },
    {
      goods: { ...pure('water', 'water of the emulsion'), id: EMULSION_WATER, source: waterBottleOf(run) },
      mass: made.water,
    },
  ];
  return { concentrate: [...lines, ...extra.filter(({ mass }) => mass > 0)], emulsion: made };
}

/** How fast the droplets rise, mm a day (below 0 they sink), and days until a ring begins to show. */
export function creaming(run: RunState, { emulsion, drink }: Plan): { mmPerDay: number; days: number } | null {
  const diameterUm = answer(run, asked(run).droplet);
  if (!emulsion || diameterUm === null) return null;
  const mmPerDay = risePerDay({
    diameterUm,
    oil: emulsion.oilPhase,
    drink: gramPerMl(drink.densityGPerMl),
    viscosityMPaS: sucroseViscosity(drink.make.brix),
  });
  return { mmPerDay, days: daysToRing(mmPerDay) };
}
