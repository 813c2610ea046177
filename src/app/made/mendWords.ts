import type { Corrected, Mending } from '../../core/drink/mending';
import type { Batch } from '../../records/kind/batch';
import { scaled, type Measured } from '../../core/number/measured';
import { formatFigures, formatFixed, formatPlain, measuredText } from '../../ui/format';
import { acidGrams, acidOf, drinkNow, isLess, measuredOff, targetsOf, type AddedNow } from '../../workshop/made/mend';
import type { PhMending } from '../../workshop/made/mendPh';

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

/** 'Add 12 ± 5 g of citric acid: pH 3.10 to 2.90.', and how much more it may take. */
export function phLine({ name, massG, upToG, now, target }: PhMending): string {
  const add = `Add ${measuredText(massG, 'g')} of ${name}: pH ${formatFixed(now, 2)} to ${formatFixed(target, 2)}.`;
  const isMore = upToG > 1.1 * massG.value;
  return isMore ? `${add} In hard water, or with juice, it takes up to ${formatPlain(upToG, 2)} g.` : add;
}

/** What was measured to be brought to its plan: its pH alone, where all else is as planned. */
export function isOfPhAlone(batch: Batch, ph: PhMending | null): boolean {
  return ph !== null && measuredOff(batch).length === 0 && !isLess(batch);
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
