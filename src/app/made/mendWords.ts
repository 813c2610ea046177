import type { Corrected, Mending } from '../../core/drink/mending';
import type { Batch } from '../../records/kind/batch';
import { scaled, type Measured } from '../../core/number/measured';
import { formatFigures, formatPlain, measuredText } from '../../ui/format';
import { acidGrams, acidOf, drinkNow, targetsOf, type AddedNow } from '../../workshop/made/mend';

/** What is added, in the order in which it goes in, g; without what is nothing. */
export function addsOf(batch: Batch, { water, adds }: Mending): { id: AddedNow['id']; name: string; mass: Measured }[] {
  const acid = acidOf(batch);
  const all: readonly (readonly [AddedNow['id'], string, Measured | undefined])[] = [
    ['spirit', 'spirit', adds.ethanol],
    ['acid', acid.name, adds.acid && scaled(adds.acid, acidGrams(acid, 1))],
    ['concentrate', 'the concentrate', adds.concentrate],
    ['sugar', 'sugar', adds.sugar],
    ['water', 'water', water],
  ];
  return all.flatMap(([id, name, mass]) => (mass && mass.value > 1e-9 ? [{ id, name, mass }] : []));
}

/** 'Add 312 ± 60 g of water: 7.4 to 7.0 °Brix.' */
export function addedLine(batch: Batch, mending: Mending, held: readonly Corrected[]): string {
  const adds = addsOf(batch, mending).map(({ name, mass }) => `${measuredText(mass, 'g')} of ${name}`);
  const changes = held.flatMap((id) => changeWords(batch, id));
  if (adds.length === 0) return 'Nothing has to be added.';
  return `Add ${adds.join(', ')}${changes.length > 0 ? `: ${changes.join(', ')}` : ''}.`;
}

/** '7.4 to 7.0 °Brix'; nothing of what is right already. */
function changeWords(batch: Batch, id: Corrected): string[] {
  const { text, unit } = fromTo[id];
  const [now, then] = [text(drinkNow(batch).shares[id].value), text(targetsOf(batch)[id])];
  return now === then ? [] : [`${now} to ${then} ${unit}`];
}

const fromTo: Readonly<Record<Corrected, { text: (share: number) => string; unit: string }>> = {
  sugar: { text: (share) => formatFigures(share * 100, 3), unit: '°Brix' },
  ethanol: { text: (share) => formatFigures(share * 100, 3), unit: '% w/w of alcohol' },
  acid: { text: (share) => formatFigures(share * 1000, 3), unit: 'g/kg of acid' },
  concentrate: { text: (share) => formatFigures(share * 1000, 3), unit: 'g/kg of concentrate' },
};

/** What becomes of those that are not held, against what was planned: 'acid 5.4 % under plan'. */
export function followWords(
  batch: Batch,
  { shares }: Mending,
  held: readonly Corrected[],
  all: readonly Corrected[],
): string[] {
  const targets = targetsOf(batch);
  return all.flatMap((id) => {
    const [now, target] = [shares[id], targets[id]];
    if (held.includes(id) || target <= 0 || Math.abs(now / target - 1) < 0.001) return [];
    return [
      `${NAMES[id].words}: ${formatPlain(Math.abs(100 * (now / target - 1)), 2)} % ${now < target ? 'under' : 'over'} plan`,
    ];
  });
}

/** What can be held, in words. */
export const NAMES: Readonly<Record<Corrected, { words: string }>> = {
  sugar: { words: 'Sugar' },
  ethanol: { words: 'Alcohol' },
  acid: { words: 'Acid' },
  concentrate: { words: 'Flavour' },
};
