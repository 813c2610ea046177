/**
 * What a refractometer shows of a drink. It reads all that is dissolved as if it were sucrose; what is sugar is the reading less
 * what acid and alcohol show. Refractive indices at 20 °C, sodium D line.
 */
import { propagate, type Measured } from '../number/measured';
import { Refusal } from '../text/refusal';

/** Refractive index of ethanol in water less that of water, by % w/w. Source: CRC Handbook, aqueous solutions at 20 °C; from memory. */
const ETHANOL: readonly (readonly [percent: number, more: number])[] = [
  [0, 0],
  [2, 0.0012],
  [4, 0.0024],
  [6, 0.0037],
  [8, 0.0051],
  [10, 0.0065],
  [14, 0.0095],
  [20, 0.0139],
  [26, 0.0181],
  [32, 0.0216],
  [40, 0.0253],
];

/** Refractive index of sucrose in water, by % w/w. Source: the international sugar scale (ICUMSA 1974) at 20 °C; from memory. */
const SUCROSE: readonly (readonly [percent: number, n: number])[] = [
  [0, 1.33299],
  [5, 1.34026],
  [10, 1.34782],
  [15, 1.35568],
  [20, 1.36384],
  [25, 1.37233],
  [30, 1.38115],
  [40, 1.39986],
  [50, 1.42009],
  [60, 1.44193],
  [70, 1.46546],
];

/**
 * °Brix that one % w/w of anhydrous citric acid shows. Source: the acid corrections to refractometer readings of fruit juice (Stevens and
 * Baier 1939, as tabled since): 0.20 °Brix are added for each % to count it like sugar, so it shows 0.80. Other acids alike: our choice.
 */
const ACID_SHOWS = 0.8;

/** How far the alcohol's part may be off beside sugar, as a half-width: our choice, for refractions are added here as if apart. */
export const ALCOHOL_HALF_WIDTH = 0.05;

/**
 * °Brix that a refractometer shows of a drink: g/g of sugar, ethanol and acid (as citric). Refractions of sugar and ethanol are
 * added: our own combination. Check: 10 % w/w of ethanol alone shows 4.5 °Brix.
 * @throws Refusal above 40 % w/w of ethanol or 70 °Brix in all
 */
export function refractometerShows(drink: { sugar: number; ethanol: number; acid: number }): number {
  if (!(drink.ethanol >= 0 && drink.ethanol <= 0.4))
    throw new Refusal('what a refractometer shows is known up to 40 % w/w of ethanol, not for {percent} %', {
      percent: { value: drink.ethanol * 100, decimals: 1 },
    });
  const n = along(SUCROSE, drink.sugar * 100) + along(ETHANOL, drink.ethanol * 100);
  return along(turned, n) + ACID_SHOWS * drink.acid * 100;
}

/**
 * The sugar behind a reading of a refractometer, °Brix, of a drink with that much ethanol and acid (g/g): the inverse of {@link refractometerShows}, with
 * the uncertainty of all three. By arithmetic. Negative where acid and alcohol alone show more than the reading.
 * @throws Refusal as above
 */
export function sugarBehind(reading: Measured, drink: { ethanol: Measured; acid: Measured }): Measured {
  const at = (shown: number, ethanol: number, acid: number) => sugarAt(shown, ethanol, acid);
  const [shown, ethanol, acid] = [reading.value, drink.ethanol.value, drink.acid.value];
  const here = at(shown, ethanol, acid);
  const step = 1e-4; // °Brix, g/g
  const before = ethanol > step ? -step : step;
  return propagate(here, [
    [reading, (at(shown + step, ethanol, acid) - here) / step],
    [drink.ethanol, (at(shown, ethanol + before, acid) - here) / before],
    [drink.acid, (at(shown, ethanol, acid + step) - here) / step],
  ]);
}

const turned = SUCROSE.map(([percent, n]) => [n, percent] as const);

function sugarAt(shown: number, ethanol: number, acid: number): number {
  const none = refractometerShows({ sugar: 0, ethanol, acid });
  if (shown <= none) return shown - none;
  let [low, high] = [0, 70];
  for (let i = 0; i < 50; i++) {
    const middle = (low + high) / 2;
    if (refractometerShows({ sugar: middle / 100, ethanol, acid }) >= shown) high = middle;
    else low = middle;
  }
  return high;
}

/** Straight lines between the rows of a table. @throws Refusal beyond its ends */
function along(table: readonly (readonly [number, number])[], x: number): number {
  const last = table.at(-1)!;
  if (!(x >= table[0]![0] - 1e-9 && x <= last[0]))
    throw new Refusal('a refractometer is reckoned with up to 70 °Brix in all');
  const at = Math.min(table.length - 2, Math.max(0, table.findIndex(([to]) => to >= x) - 1));
  const [[from, low], [to, high]] = [table[at]!, table[at + 1]!];
  return low + ((high - low) * (x - from)) / (to - from);
}
