import type { Quantity, SinceOf } from '../../records/kind/since';
import { formatPlain, measuredText } from '../../ui/format';
import type { Beside } from '../../workshop/made/measured';

interface Words {
  readonly name: string;
  readonly unit: string;
  /** What the instrument shows, and in what. */
  readonly shows: string;
  readonly in: string;
  readonly most: number;
  /** ± that is usual of an instrument for it: common practice, no source. */
  readonly usual: string;
  readonly how: string;
}

/** The quantities of a batch in words. */
export const quantities: Readonly<Record<Quantity, Words>> = {
  brix: {
    name: 'Sugar',
    unit: '°Brix',
    shows: 'It shows',
    in: '°Brix',
    most: 70,
    usual: '0.2',
    how: 'At 20 °C, or with an instrument that corrects for warmth; without its gas.',
  },
  abv: {
    name: 'Alcohol',
    unit: '% ABV',
    shows: 'Measured',
    in: '% ABV',
    most: 70,
    usual: '0.2',
    how: 'A hydrometer for spirits is right only without sugar: distil first, or use a method that tells the two apart.',
  },
  acid: {
    name: 'Acid',
    unit: 'g/L',
    shows: 'Titrated, as citric acid',
    in: 'g/L',
    most: 30,
    usual: '0.1',
    how: 'To pH 8.1 with sodium hydroxide, gas out; counted as anhydrous citric acid, 64.04 g for each mole.',
  },
  pH: {
    name: 'pH',
    unit: '',
    shows: 'The meter shows',
    in: 'pH',
    most: 14,
    usual: '0.05',
    how: 'Calibrated at pH 4 and 7 on the same day; gas out.',
  },
  litres: {
    name: 'Volume',
    unit: 'L',
    shows: 'There is',
    in: 'L',
    most: 100_000,
    usual: '0.1',
    how: 'All that there is now, at 20 °C.',
  },
  gas: {
    name: 'Gas',
    unit: 'volumes',
    shows: 'The gauge shows',
    in: 'bar',
    most: 9,
    usual: '0.05',
    how: 'Shaken until the needle stays, air let out first. Reckoned as water: sugar and alcohol hold a little less.',
  },
};

/** What was measured, or that nothing was. */
export function measuredWords({ of, measured }: Beside): string {
  return measured ? measuredText(measured, quantities[of].unit).trim() : 'Measure';
}

/** What stands beside it: plan, weighings, and what else the instrument shows. */
export function besideWords({ of, planned, weighed, alsoShows, reading }: Beside): string {
  const { unit } = quantities[of];
  const also = alsoShows ?? 0;
  return [
    planned === null ? '' : `planned ${formatPlain(planned, 3)}`,
    weighed === null ? '' : `by weighing ${measuredText(weighed, unit, { most: 3 })}`,
    reading && Math.abs(also) > 0.005
      ? `the refractometer showed ${formatPlain(reading.value)}, of which ${formatPlain(also, 2)} is acid and alcohol`
      : '',
  ]
    .filter(Boolean)
    .join('; ');
}

/** How a bottle under trial was beside its control, as it is told. */
export const foundWords: Readonly<Record<SinceOf<'seen'>['state'], { words: string }>> = {
  'as the control': { words: 'As the control' },
  'slightly off': { words: 'Slightly off' },
  'clearly off': { words: 'Clearly off' },
  spoiled: { words: 'Spoiled' },
};
