import type { AnyRecord, RecordOf } from '../../records/kind/kinds';
import type { Done } from '../../records/kind/record';
import { find, newId, newRecord } from '../../records/shelf';
import { outcome } from '../../workshop/attempt';
import { answer } from '../engine/answers';
import type { RunState } from '../engine/fold';
import { usedBase } from './drink';
import { fields, seriesFields } from './fields';
import { alcoholIsUnknown, chosenVial, countOf, dropsOf, glassOf, targetOf, type Dosing, type Glass } from './glass';
import { refusalOfRun } from './fit';
import { blankOf, isBlind, isSeries, pouredOf, rungGlass, rungsOf, type Poured, type Rung } from './series';
import { nameOf } from './results';
import { judgeGlass } from './parts';
import { reasonFor } from '../shared/goingOn';
import { droppedBy, useOf } from '../../workshop/uses';
import { Refusal } from '../../core/text/refusal';
import { labelTagOf } from '../../workshop/thing/labelled';

type Tasting = RecordOf<'tasting'>;

/** The tastings that a run ends in, the best first, and the drink when it is new. @throws Refusal when it cannot end so */
export function keepDose(run: RunState): AnyRecord[] {
  const refusal = refusalOfRun(run);
  if (refusal) throw new Refusal(refusal);
  const glasses = isSeries(run) ? seriesGlasses(run) : [{ glass: single(run), tasted: verdictOf(run) }];
  if (glasses.some(({ glass }) => glass.dosings.every(({ mass }) => mass.value === 0)))
    throw new Refusal('Nothing has been dosed yet.');
  const used = usedBase(run);
  const fresh = used ? null : newRecord('base', { id: newId(), ...glasses[0]!.glass.base.facts });
  const base = (used ?? fresh!).id;
  const tastings = glasses.map(({ glass, tasted }) => {
    const reason = reasonFor(run, judgeGlass(run, glass));
    const tasting = tastingOf(glass, base, tasted);
    return reason === undefined ? tasting : { ...tasting, although: reason };
  });
  const sorted = [...tastings].sort((a, b) => Number(b.glass?.best ?? false) - Number(a.glass?.best ?? false));
  return fresh ? [...sorted, fresh] : sorted;
}

function single(run: RunState): Glass {
  const glass = glassOf(run, countOf(run));
  if (!glass) throw new Refusal(UNKNOWN);
  return glass;
}

/** The drops that were asked for in one glass, and where others fell. Of several glasses each tells its own. */
export function happenedIn(run: RunState): Pick<Done, 'plan' | 'slips'> {
  const doses = Array.from({ length: isSeries(run) ? 0 : countOf(run) }, (_, k) => {
    const vial = find('vial', chosenVial(run, k + 1));
    const planned = outcome(() => targetOf(run, k + 1)).value?.drops;
    return vial && planned !== undefined
      ? [{ id: vial.id, code: labelTagOf(vial), drops: planned, fell: dropsOf(run, k + 1) }]
      : [];
  }).flat();
  if (doses.length === 0) return {};
  const slips = doses
    .filter(({ drops, fell }) => drops !== fell)
    .map(({ id, code, drops, fell }) => ({
      id,
      what: code,
      planned: drops,
      counted: fell,
      unit: 'drops' as const,
      way: 'By taste',
    }));
  const plan = { lines: doses.map(({ id, code, drops }) => ({ id, code, drops })) };
  return { plan, ...(slips.length > 0 ? { slips } : {}) };
}

type Tasted = Pick<Tasting, 'verdict' | 'liking' | 'glass'>;

function verdictOf(run: RunState): Tasted {
  return { verdict: answer(run, fields.verdict) ?? '', liking: answer(run, fields.liking('liking')) };
}

const UNKNOWN = 'The drink is not known yet: go back and fill in what is missing.';

function seriesGlasses(run: RunState): { glass: Glass; tasted: Tasted }[] {
  const rungs = rungsOf(run);
  const poured = rungs && pouredOf(run, rungs);
  if (!rungs || !poured) throw new Refusal('The series is not known yet: go back and fill in what is missing.');
  const best = answer(run, seriesFields.best(poured.map(({ code }) => code)));
  const blank = blankTasted(run, rungs, poured);
  return poured.flatMap(({ k, code, rung }) => {
    const glass = rung && rungGlass(run, k);
    if (rung && !glass) throw new Refusal(UNKNOWN);
    const own = { code, blind: isBlind(run), best: best === code, ...(blank ? { blank } : {}) };
    return glass ? [{ glass, tasted: { ...tastedOf(run, k), glass: own } }] : [];
  });
}

function tastedOf(run: RunState, k: number): Pick<Tasting, 'verdict' | 'liking'> {
  return { verdict: answer(run, seriesFields.note(k)) ?? '', liking: answer(run, fields.liking(`liking.${k}`)) };
}

/** How the blank of a series was: every glass of it keeps that. */
function blankTasted(run: RunState, rungs: readonly Rung[], poured: readonly Poured[]): Blank | null {
  const [blank, glass] = [blankOf(run, rungs), poured.find(({ rung }) => rung === null)];
  if (!blank || !glass) return null;
  const solvent = blank.solvent === null ? {} : { solvent: blank.solvent, drops: run.drops['blank'] ?? 0 };
  return { code: glass.code, ...solvent, ...tastedOf(run, 0) };
}

type Blank = NonNullable<NonNullable<Tasting['glass']>['blank']>;

function tastingOf(glass: Glass, base: string, tasted: Tasted): Tasting {
  const { dosings, dose } = glass;
  return newRecord('tasting', {
    from: [...new Set([...dosings.map(({ vial }) => vial.id), base])],
    base: glass.base.facts,
    doses: dosings.map(({ vial, drops, mass }) => ({ vial: vial.id, code: labelTagOf(vial), drops, massG: mass })),
    reached: dose.materials.map(({ material, mgPerKg, mgPerL }) => ({
      material,
      name: nameOf(glass, material),
      mgPerKg,
      mgPerL,
    })),
    ...(alcoholIsUnknown(glass).length > 0 ? {} : { abv: dose.abv }),
    ...tasted,
    uses: dosings.map(useOfDosing),
  });
}

function useOfDosing({ vial, drops, dropper, mass }: Dosing): Tasting['uses'][number] {
  const counted = drops !== null && { how: 'counted' as const, drops, ...droppedBy(dropper) };
  return useOf(vial.id, mass, counted || { how: 'weighed' });
}
