import { list } from '../../records/shelf';
import type { Vial } from '../../records/kind/vial';
import { whyNotByItself } from '../../workshop/takenByItself';
import { strengthText } from '../../workshop/thing/strengthText';
import { clockOf } from './clock';

/**
 * The vials to layer: those of the last layering first, then by when they were layered last, then the newest; made-up ones and those that
 * are empty or past their date at the end.
 */
export function vialsInOrder(): Vial[] {
  const layered = new Map<string, number>();
  list('layering').forEach(({ strips }, age) => {
    for (const { vial } of strips) if (!layered.has(vial)) layered.set(vial, age);
  });
  const rank = (vial: Vial) =>
    [+(whyNot(vial) !== ''), +(vial.demo === true), layered.get(vial.id) ?? Infinity] as const;
  const ranked = list('vial').map((vial, i) => ({ vial, keys: [...rank(vial), i] }));
  const before = (a: readonly number[], b: readonly number[]) => {
    const at = a.findIndex((key, i) => key !== b[i]);
    return at < 0 ? 0 : a[at]! < b[at]! ? -1 : 1;
  };
  return ranked.sort((a, b) => before(a.keys, b.keys)).map(({ vial }) => vial);
}

/** Why a vial is not as good as another, '' where it is. */
export function whyNot(vial: Vial): string {
  return whyNotByItself(vial) ?? '';
}

/** What a vial is and how its strip dries: '1.0 ± 0.4 % w/v in ethanol 96 %, dries in about 2 min'. */
export function vialWords(vial: Vial): string {
  const { basis, words } = clockOf(vial, null);
  const drying = basis === 'stays wet' || basis === 'not known' || /^neat/.test(words) ? words : `dries in ${words}`;
  const what = `${strengthText(vial)}${vial.solvent ? ` in ${vial.solvent.name}` : ''}`;
  return [what, drying, whyNot(vial)].filter(Boolean).join(', ');
}
