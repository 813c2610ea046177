import { CONCENTRATE } from '../../core/drink/batchPlan';
import { densityWithin } from '../../core/drink/densityWithin';
import { drinkDensity } from '../../core/drink/finishedDrink';
import { drinkMakeOf, drinkMakeOfLitre } from '../../core/drink/drinkMake';
import { drinkGauge, gasShare } from '../../core/drink/gas';
import { volumesAt } from '../../core/liquid/carbonation';
import { ethanolDensity } from '../../core/liquid/ethanol';
import { ALCOHOL_HALF_WIDTH, refractometerShows, sugarBehind } from '../../core/liquid/refraction';
import { exact, measured, over, plus, propagate, scaled, times, type Measured } from '../../core/number/measured';
import { readNumber } from '../../core/number/typed';
import { celsius, massFraction, REFERENCE_TEMPERATURE, volumeFraction } from '../../core/number/units';
import { CITRIC } from '../../core/drink/syrup';
import type { Batch } from '../../records/kind/batch';
import type { Quantity, SinceOf } from '../../records/kind/since';
import { acids } from '../../tables/syrupAdditives';
import { outcome } from '../attempt';
import { sinceOf } from './since';

type Reading = SinceOf<'reading'>;

/** A quantity of a batch beside its plan: as it was planned, as the weighings make it, and as it was measured last. */
export interface Beside {
  readonly of: Quantity;
  readonly planned: number | null;
  readonly weighed: Measured | null;
  /** Of a refractometer the sugar behind what it showed. */
  readonly measured: Measured | null;
  readonly reading: Reading | null;
  /** °Brix that a refractometer shows beside the sugar, where it was used. */
  readonly alsoShows?: number;
}

/** Readings that still hold: those since the drink was last corrected, the newest of each quantity. */
export function readingsNow(batch: Batch): Partial<Record<Quantity, Reading>> {
  const mended = sinceOf(batch, 'mended').at(-1)?.at ?? '';
  const now = sinceOf(batch, 'reading').filter(({ at }) => at > mended);
  return Object.fromEntries(now.map((reading) => [reading.of, reading]));
}

/** What can be read off a batch, beside its plan: g/L of acid as anhydrous citric acid, volumes of gas, L, °Brix, % ABV. */
export function besidePlan(batch: Batch): Beside[] {
  const readings = readingsNow(batch);
  const plan = plannedOf(batch);
  const { brix, abv, litres } = batch.drink;
  const weighed: Partial<Record<Quantity, Measured>> = { brix, abv, litres, acid: acidPerLitre(batch) };
  return QUANTITIES.map((of): Beside => {
    const reading = readings[of] ?? null;
    const beside = { of, planned: plan[of] ?? null, weighed: weighed[of] ?? null, reading };
    if (!reading) return { ...beside, measured: null };
    const found = foundBy(batch, reading);
    return reading.by === 'refractometer'
      ? { ...beside, measured: found, alsoShows: reading.value - found.value }
      : { ...beside, measured: found };
  });
}

const QUANTITIES: readonly Quantity[] = ['brix', 'abv', 'acid', 'pH', 'litres', 'gas'];

/** A reading as a measured value with its source. */
function shownBy({ id, value, u }: Reading): Measured {
  return measured(value, u, { id: `reading:${id}`, words: 'the instrument' });
}

/** What a reading says of the drink, in the unit of its quantity. */
function foundBy(batch: Batch, reading: Reading): Measured {
  const shown = shownBy(reading);
  if (reading.of === 'gas') return scaled(volumesBehind(shown, reading.atC ?? 20), gasHeldBy(batch));
  if (reading.of !== 'brix') return shown;
  if (reading.by === 'refractometer')
    return sugarBehind(shown, { ethanol: ethanolInRefraction(batch), acid: acidShare(batch) });
  return reading.by === 'density' ? sugarBehindDensity(shown, ethanolShare(batch)) : shown;
}

/** What the drink holds of the gas that water does, from its sugar and alcohol; as water where that is not known. */
function gasHeldBy({ drink: { brix, abv, densityGPerMl } }: Batch): number {
  const sugarPerL = brix.value * 10 * densityGPerMl.value; // g in 100 g to g in a litre
  return outcome(() => ({ share: gasShare(sugarPerL, abv.value) })).value?.share ?? 1;
}

/** Volumes of CO2 in water behind a gauge (bar) at °C, with the ± of the gauge; half a degree beside it is our choice. */
function volumesBehind(gauge: Measured, atC: number): Measured {
  const at = (bar: number, t: number) => volumesAt(bar, celsius(Math.min(40, Math.max(0, t))));
  const here = at(gauge.value, atC);
  const warmth = measured(atC, 0.25, { id: 'gauge:temperature', words: 'temperature of the drink' });
  return propagate(here, [
    [gauge, (at(gauge.value + 0.01, atC) - here) / 0.01],
    [warmth, (at(gauge.value, atC + 0.1) - here) / 0.1],
  ]);
}

/** Sugar behind the °Brix of a density meter or hydrometer, which takes all that makes the drink denser for sugar; alcohol makes it lighter. */
function sugarBehindDensity(shown: Measured, ethanol: Measured): Measured {
  const at = (brix: number, spirit: number) => {
    const density = drinkDensity({ brix: massFraction(brix / 100), ethanol: massFraction(0) });
    let [low, high] = [0, 0.8 - spirit];
    for (let i = 0; i < 50; i++) {
      const middle = (low + high) / 2;
      if (drinkDensity({ brix: massFraction(middle), ethanol: massFraction(spirit) }) >= density) high = middle;
      else low = middle;
    }
    return 100 * high;
  };
  const here = at(shown.value, ethanol.value);
  const step = 1e-3;
  return propagate(here, [
    [shown, (at(shown.value + step, ethanol.value) - here) / step],
    [ethanol, (at(shown.value, ethanol.value + step) - here) / step],
  ]);
}

/** °Brix that a refractometer should show of the drink as it was weighed. */
export function refractometerExpects(batch: Batch): number {
  return refractometerShows({
    sugar: batch.drink.brix.value / 100,
    ethanol: ethanolShare(batch).value,
    acid: acidShare(batch).value,
  });
}

/** g of ethanol in a g of the drink: measured, else weighed. */
export function ethanolShare(batch: Batch): Measured {
  const reading = readingsNow(batch).abv;
  const abv = reading ? shownBy(reading) : batch.drink.abv;
  const pure = ethanolDensity(massFraction(1), REFERENCE_TEMPERATURE);
  return scaled(over(abv, batch.drink.densityGPerMl), pure / 100);
}

/** The same as a refractometer sees it beside sugar: with what adding refractions leaves open. */
function ethanolInRefraction(batch: Batch): Measured {
  const share = ethanolShare(batch);
  const u = (share.value * ALCOHOL_HALF_WIDTH) / Math.sqrt(3);
  return plus(share, measured(0, u, { id: 'refraction:alcohol', words: 'alcohol and sugar in a refractometer' }));
}

/** g/g of acid in the drink, as anhydrous citric acid: titrated, else weighed. */
export function acidShare(batch: Batch): Measured {
  const reading = readingsNow(batch).acid;
  const perLitre = reading ? shownBy(reading) : acidPerLitre(batch);
  return scaled(over(perLitre, batch.drink.densityGPerMl), 1 / 1000);
}

/** g/L of acid as it was weighed, as anhydrous citric acid (by protons titrated), with that of juices and the like. */
export function acidPerLitre(batch: Batch): Measured {
  const all = batch.weighed.flatMap(({ id, massG, share = 1, acid: own }) => {
    if (own !== undefined) return scaled(massG, own); // of a juice or the like
    const acid = acids.find((one) => one.id === id)?.acid;
    return acid ? scaled(massG, (share * (CITRIC.molarMass / CITRIC.protons)) / (acid.molarMass / acid.protons)) : [];
  });
  return over(plus(exact(0), ...all), batch.drink.litres);
}

/** g of concentrate in a g of drink, as it was weighed; what is spirit, syrup or water is none. */
export function concentrateShare(batch: Batch): Measured {
  const poured = batch.weighed.filter(({ id, into }) => id === CONCENTRATE && into !== 'concentrate');
  return over(plus(exact(0), ...poured.map(({ massG }) => massG)), drinkMass(batch));
}

/** g of the drink: measured as a volume, else as it was weighed. */
export function massNow(batch: Batch): Measured {
  const reading = readingsNow(batch).litres;
  return reading ? scaled(times(shownBy(reading), densityNow(batch)), 1000) : drinkMass(batch);
}

function drinkMass({ drink: { litres, densityGPerMl } }: Batch): Measured {
  return scaled(times(litres, densityGPerMl), 1000); // mL per L
}

/** g/mL with the sugar and alcohol that were measured. */
export function densityNow(batch: Batch): Measured {
  return densityWithin(sugarShare(batch), ethanolShare(batch));
}

/** g of sugar in a g of the drink: measured, else weighed. */
export function sugarShare(batch: Batch): Measured {
  const reading = readingsNow(batch).brix;
  return scaled(reading ? foundBy(batch, reading) : batch.drink.brix, 1 / 100);
}

/** What was asked for, in the units of the quantities; what no one asked for, and what the first version did not keep, is left out. */
export function plannedOf({ asked, keeping }: Batch): Partial<Record<Quantity, number>> {
  const abv = numberIn(asked['abv']);
  const brix = asked['sugar.by'] === 'litre' ? brixOfLitre(numberIn(asked['sugar.l']), abv) : numberIn(asked['brix']);
  const [bottled, gas] = [numberIn(asked['litres']), numberIn(asked['gas'])];
  const litres = bottled === undefined ? undefined : bottled / (1 - (numberIn(asked['loss']) ?? 0) / 100);
  const acid = asked['acid'] === 'none' ? 0 : numberIn(asked['acidity']);
  const pH = numberIn(asked['ph.target']) ?? keeping?.phMeasured ?? keeping?.phComputed;
  const known = { brix, abv, litres, acid, gas: gas === 0 ? undefined : gas, pH };
  return Object.fromEntries(Object.entries(known).filter(([, value]) => value !== undefined));
}

/** Bar on the gauge that holds the gas that was planned, at °C. */
export function gaugeFor(batch: Batch, volumes: number, atC: number): number {
  return drinkGauge(volumes, gasHeldBy(batch), celsius(atC));
}

/** The share of ethanol (g/g) that a drink of so much sugar (°Brix) and % ABV has. */
export function ethanolFor(brix: number, abv: number): number {
  return drinkMakeOf(massFraction(brix / 100), volumeFraction(abv / 100)).ethanol;
}

function brixOfLitre(sugar: number | undefined, abv = 0): number | undefined {
  return sugar === undefined ? undefined : 100 * drinkMakeOfLitre(sugar, volumeFraction(abv / 100)).brix;
}

/** A number as it was typed; of one with two readings the decimal one, as a run reads it. */
export function numberIn(text = ''): number | undefined {
  const typed = readNumber(text);
  if (typed.kind === 'two') return typed.readings[1];
  return typed.kind === 'number' ? typed.value : undefined;
}
