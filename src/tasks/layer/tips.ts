import type { Tip } from '../../ui/drawn/Strip';
import type { TipSign } from '../../ui/drawn/tipSigns';

/** What a tip says beside its colour, by colour family. */
const signs: Readonly<Record<string, TipSign>> = {
  citrus: 'disc',
  fruit: 'ring',
  flower: 'plus',
  green: 'triangle',
  herb: 'diamond',
  spice: 'hourglass',
  wood: 'posts',
  sweet: 'square',
  roast: 'wedge',
  fresh: 'bars',
};

/** Colour and sign of a family; null for a strip without one. The colours are in layer.css. */
export function tipOf(family: string): Tip | null {
  const sign = signs[family];
  return sign ? { hue: `var(--family-${family})`, sign } : null;
}
