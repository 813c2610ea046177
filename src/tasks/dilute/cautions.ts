import { cautionWords } from '../../workshop/cautionWords';
import type { Source } from './source';
import type { SolventOnHand } from '../../workshop/onHand';

const FLAMMABLE = 60; // °C, flash point up to which a liquid counts as flammable (GHS class 3; from memory, not verified)

/** The usual cautions for a solvent and for neat material, and those that the material carries itself (codes of the table). */
export function cautionsFor(solvent: SolventOnHand | null, neat: boolean, own: readonly string[] = []): string[] {
  const burns = solvent?.flashC !== undefined && solvent.flashC <= FLAMMABLE;
  return [
    ...(burns ? [`${capital(solvent.name)} burns and so does its vapour: no flame, no spark, open a window.`] : []),
    ...(neat ? ['Neat material: gloves, eyes covered, never on the skin, never taste it.'] : []),
    ...(neat ? cautionWords(own) : []),
  ];
}

/** The word on a vial that must never reach a drink, or null for one that may. */
export function smellOnlyReason(solvent: SolventOnHand, { refusal }: Pick<Source, 'refusal'>): string | null {
  if (!solvent.food)
    return `${capital(solvent.name)} that is not food grade: this vial is smell only, never for a drink.`;
  return refusal && 'The source is smell only, so this vial is too.';
}

function capital(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}
