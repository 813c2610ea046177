import { filled, type Filling, type Sentence } from '../core/text/refusal';
import { formatFigures, formatFixed, formatGiven, formatPlain } from './format';

/** What the person calls the thing of an id: a vial's code, a material's name. */
export type NameOf = (id: string) => string | undefined;

/** A sentence as the person reads it: numbers with the phone's decimal sign, things by the names that `nameOf` has for them. */
export function sentenceWords(said: Sentence, nameOf?: NameOf): string {
  return filled(said, (filling) => fillingWords(filling, nameOf));
}

/** The same as a sentence of its own: a capital at the beginning, a full stop at the end. */
export function refusalWords(said: Sentence, nameOf?: NameOf): string {
  const words = sentenceWords(said, nameOf);
  return `${words.charAt(0).toUpperCase()}${words.slice(1)}${/[.!?]$/.test(words) ? '' : '.'}`;
}

function fillingWords(filling: Filling, nameOf?: NameOf): string {
  if (typeof filling === 'string') return filling;
  if (typeof filling === 'number') return formatGiven(filling);
  if ('id' in filling) return nameOf?.(filling.id) ?? filling.name ?? filling.id;
  const { value } = filling;
  if ('digits' in filling) return formatPlain(value, filling.digits);
  return 'figures' in filling ? formatFigures(value, filling.figures) : formatFixed(value, filling.decimals);
}
