import { judgeStage, type Stage } from '../../core/liquid/stage';
import { find } from '../../records/shelf';
import { mediumOf, solutesOf, solventIn } from '../../workshop/liquidStage';
import { solventsOnHand } from '../../workshop/onHand';
import { carriersOf } from '../../workshop/thing/carrier';
import type { Source } from './source';

/** What a vial of `mgPerL` of neat material in all asks of a solvent, with what the source brings along; null for a solvent that is not on hand. */
export function stageIn(source: Source, solvent: string, mgPerL: number): Stage | null {
  const chosen = solventsOnHand().find(({ id }) => id === solvent);
  const strength = source.contents.reduce((sum, part) => sum + part.strength.value, 0);
  if (!chosen || !(strength > 0)) return null;
  const sourceG = mgPerL / 1000 / strength; // g in a litre
  const solventG = Math.max(0, 1 - sourceG / source.density.value / 1000) * 1000 * chosen.density.gPerMl;
  const vial = find('vial', source.id);
  const brought = vial ? carriersOf(vial).map(({ id, share }) => solventIn(id, share * sourceG, 1)) : [];
  const all = [solventIn(solvent, solventG, chosen.density.gPerMl, chosen.abv), ...brought];
  const sum = (of: 'waterG' | 'ethanolG') => all.reduce((grams, one) => grams + one[of], 0);
  const medium = mediumOf({
    ml: 1000,
    grams: solventG + sourceG,
    waterG: sum('waterG'),
    ethanolG: sum('ethanolG'),
    sugarG: 0,
    solvents: all.flatMap(({ solvents }) => solvents),
  });
  const solutes = source.contents.flatMap(({ material, name, strength: share }) =>
    solutesOf(material, name, (mgPerL * share.value) / strength),
  );
  return judgeStage(solutes, medium);
}

/** Whether a source stays undissolved in a solvent at so many mg/L: only where what is known leaves no doubt. */
export function staysCloudy(source: Source, solvent: string, mgPerL: number): boolean {
  return stageIn(source, solvent, mgPerL)?.verdict === 'stays cloudy';
}

/** Solvents of the bench that surely hold it at so many mg/L and may go into a drink, by name. */
export function solventsThatHold(source: Source, mgPerL: number): string[] {
  const usual = solventsOnHand().filter(({ foodPossible }) => foodPossible);
  return usual.filter(({ id }) => stageIn(source, id, mgPerL)?.verdict === 'dissolves').map(({ name }) => name);
}
