import type { Material } from '../../records/kind/material';
import { find } from '../../records/shelf';
import { labelDuties } from '../../tables/drinkLabel/labelDuties';
import { formatPlain } from '../../ui/format';
import type { DrinkToLabel } from './drinkToLabel';

/** How the flavouring of a drink may be declared, from where its materials come; what the supplier confirms in writing decides. */
export function flavouringWays({ market, parts }: DrinkToLabel): string[] {
  const dosed = parts.flatMap(({ id, carrier, fixed, mgPerKg }) => {
    const material = find('material', id);
    return material && !carrier && !fixed && mgPerKg.value > 0 ? [{ material, amount: mgPerKg.value }] : [];
  });
  const all = dosed.reduce((sum, { amount }) => sum + amount, 0);
  if (all === 0) return [];
  const natural = dosed.filter(({ material }) => material.sort === 'natural');
  if (natural.length < dosed.length) return [notAll(market, dosed.map(({ material }) => material))]; // prettier-ignore
  if (market === 'US')
    return ['All of it is from plants by your Shelf: “natural flavor”, where its suppliers confirm it'];
  const [plant, share] = largest(natural.map(({ material, amount }) => [material.botanical ?? '', amount / all]));
  const percent = `${formatPlain(100 * share, 3)} %`;
  const first = 'All of it is from plants by your Shelf: “natural flavouring”, where its suppliers confirm it';
  if (plant === '') return [first];
  return [
    first,
    share >= labelDuties.naturalX.share
      ? `${percent} of it is from ${plant}: “natural … flavouring” with the usual name of that plant, where it tastes of it`
      : `${percent} of it is from ${plant}, under 95 %: “natural … flavouring with other natural flavourings” at most, where it tastes of it`,
  ];
}

function notAll(market: DrinkToLabel['market'], materials: readonly Material[]): string {
  const names = materials.filter(({ sort }) => sort !== 'natural').map(({ name }) => name);
  const which = names.slice(0, 3).join(', ') + (names.length > 3 ? ' and others' : '');
  const plain = market === 'US' ? '“artificial flavor”, or “natural and artificial flavor”' : '“flavouring”';
  return `Only ${plain}: ${which} would have to be natural by the papers of the supplier first`;
}

/** The plant with the largest share, g/g. */
function largest(shares: readonly (readonly [plant: string, share: number])[]): readonly [string, number] {
  const sums = new Map<string, number>();
  for (const [plant, share] of shares) sums.set(plant, (sums.get(plant) ?? 0) + share);
  return [...sums].sort(([, one], [, other]) => other - one)[0] ?? ['', 0];
}
