import { SUGAR, WATER, CONCENTRATE } from '../../core/drink/batchPlan';
import { densityWithin } from '../../core/drink/densityWithin';
import { drinkDensity } from '../../core/drink/finishedDrink';
import { CORRECTED, isOff, mendingOf, type Corrected, type DrinkNow, type Mending } from '../../core/drink/mending';
import { CITRIC } from '../../core/drink/syrup';
import { ethanolDensity, ethanolMassFraction } from '../../core/liquid/ethanol';
import { exact, over, plus, scaled, standardUncertainty, times, type Measured } from '../../core/number/measured';
import { massFraction, PPM, REFERENCE_TEMPERATURE, volumeFraction } from '../../core/number/units';
import type { Batch, Weighed } from '../../records/kind/batch';
import type { Vial } from '../../records/kind/vial';
import { find, list } from '../../records/shelf';
import { bufferSalts } from '../../tables/keeping/acidity';
import { acids } from '../../tables/syrupAdditives';
import { carriersOf } from '../thing/carrier';
import { tagOf } from '../thing/labelled';
import { useOf } from '../uses';
import {
  acidShare,
  concentrateShare,
  ethanolFor,
  ethanolShare,
  massNow,
  plannedOf,
  readingsNow,
  sugarShare,
} from './measured';
import { withFact } from './since';

/**
 * The drink as it is now: what was measured, else what was weighed, g and g/g. Where less was measured than was weighed because
 * water is missing, there is more of what was not measured in each gram; where some was taken out, there is not.
 */
export function drinkNow(batch: Batch, isWaterMissing = false): DrinkNow {
  const mass = massNow(batch);
  const readings = readingsNow(batch);
  const { litres, densityGPerMl } = batch.drink;
  const denser = isWaterMissing ? over(scaled(times(litres, densityGPerMl), 1000), mass) : exact(1);
  const shareOf = (share: Measured, isMeasured: boolean) => (isMeasured ? share : times(share, denser));
  return {
    mass,
    shares: {
      sugar: shareOf(sugarShare(batch), readings.brix !== undefined),
      ethanol: shareOf(ethanolShare(batch), readings.abv !== undefined),
      acid: shareOf(acidShare(batch), readings.acid !== undefined),
      concentrate: shareOf(concentrateShare(batch), false),
    },
  };
}

/** Whether less was measured than was weighed, by more than its ±. */
export function isLess(batch: Batch): boolean {
  const { litres } = batch.drink;
  const reading = readingsNow(batch).litres;
  return reading !== undefined && reading.value + 2 * reading.u < litres.value - 2 * standardUncertainty(litres);
}

/** What was planned of each, g/g; where no plan was kept, what was weighed. */
export function targetsOf(batch: Batch): Record<Corrected, number> {
  const plan = plannedOf(batch);
  const brix = plan.brix ?? batch.drink.brix.value;
  const ethanol = ethanolFor(brix, plan.abv ?? batch.drink.abv.value);
  const density = drinkDensity({ brix: massFraction(brix / 100), ethanol: massFraction(ethanol) });
  return {
    sugar: brix / 100,
    ethanol: plan.abv === 0 ? 0 : ethanol,
    acid: plan.acid === undefined ? acidShare(batch).value : plan.acid / (1000 * density),
    concentrate: concentrateShare(batch).value,
  };
}

/** What was measured, and differs from the plan by more than its own ±. */
export function measuredOff(batch: Batch): Corrected[] {
  const readings = readingsNow(batch);
  const measured: readonly (readonly [Corrected, boolean])[] = [
    ['sugar', readings.brix !== undefined],
    ['ethanol', readings.abv !== undefined],
    ['acid', readings.acid !== undefined],
  ];
  const [now, targets] = [drinkNow(batch).shares, targetsOf(batch)];
  return measured.flatMap(([id, is]) => (is && isOff(now[id], targets[id]) ? [id] : []));
}

/** What is wanted in the drink; what a carrier brought unasked is none of it. */
export function inDrink(batch: Batch): Corrected[] {
  const targets = targetsOf(batch);
  return CORRECTED.filter((id) => targets[id] > 0);
}

/**
 * What has to be added so that those are as planned; the rest is left to follow. `spirit` is its % ABV.
 * @throws Refusal where nothing that is added does it
 */
export function mendingFor(
  batch: Batch,
  { held, spirit, isWaterMissing }: { held: readonly Corrected[]; spirit: number; isWaterMissing: boolean },
): Mending {
  const targets = targetsOf(batch);
  const wanted = Object.fromEntries(held.map((id) => [id, targets[id]]));
  return mendingOf(drinkNow(batch, isWaterMissing), wanted, ethanolMassFraction(volumeFraction(spirit / 100)));
}

/** The acid that the batch was made with; citric where it had none. */
export function acidOf({ weighed }: Batch): (typeof acids)[number] {
  return acids.find(({ id }) => weighed.some((row) => row.id === id)) ?? acids[0]!;
}

/** The buffer salt that was asked for; trisodium citrate where none was. */
export function saltOf({ asked }: Batch): (typeof bufferSalts)[number] {
  return bufferSalts.find(({ id }) => id === asked['salt']) ?? bufferSalts[0];
}

/** g to weigh of that acid for so many g of citric acid. */
export function acidGrams({ acid }: (typeof acids)[number], citric: number): number {
  return citric * (acid.molarMass / acid.protons / (CITRIC.molarMass / CITRIC.protons));
}

/** The rest of the concentrate of a batch, where it was kept as a vial. */
export function leftConcentrate({ id }: Batch): Vial | undefined {
  return list('vial').find(({ from, sort }) => sort === 'concentrate' && from.includes(id));
}

/** What was weighed into a drink to correct it. */
export interface AddedNow {
  readonly id: 'water' | 'sugar' | 'spirit' | 'acid' | 'salt' | 'concentrate';
  readonly massG: Measured;
  readonly plannedG: number;
}

/**
 * The batch with what was added to it: among its weighings and uses, and its drink reckoned again from all that was weighed. Readings from
 * before no longer count. `spirit` is % ABV, `bottle` the bottle of it where it is on the Shelf.
 */
export function mendedWith(batch: Batch, added: readonly AddedNow[], spirit: number, bottle?: string): Batch {
  const vial = leftConcentrate(batch);
  const rows = added.map((one) => rowOf(batch, one, spirit, bottle));
  const drink = drinkWith(batch, added, spirit);
  const uses = added.flatMap(({ id, massG }) => {
    const of = id === 'spirit' ? bottle : id === 'concentrate' ? vial?.id : undefined;
    return of === undefined ? [] : [useOf(of, massG, { how: 'weighed' })];
  });
  const fact = {
    fact: 'mended' as const,
    added: rows.map(({ id, name, massG }) => ({ id, name, massG: massG.value })),
    before: { litres: batch.drink.litres, brix: batch.drink.brix, abv: batch.drink.abv },
  };
  return withFact(
    {
      ...batch,
      from: [...new Set([...batch.from, ...uses.map(({ id }) => id)])],
      weighed: [...batch.weighed, ...rows],
      uses: [...batch.uses, ...uses],
      drink: { ...batch.drink, ...drink.now },
      reached: reachedWith(batch, added, drink),
    },
    fact,
  );
}

function rowOf(batch: Batch, { id, massG, plannedG }: AddedNow, spirit: number, bottle?: string): Weighed {
  const [acid, salt, vial] = [acidOf(batch), saltOf(batch), leftConcentrate(batch)];
  const names = { water: WATER, sugar: 'sugar', spirit: `spirit, ${spirit} % ABV`, acid: acid.name, salt: salt.name };
  const name = id === 'concentrate' ? (vial ? tagOf(vial) : 'the concentrate') : names[id];
  const ids = { water: WATER, sugar: SUGAR, spirit: 'spirit', acid: acid.id, salt: salt.id, concentrate: CONCENTRATE };
  const lot = id === 'spirit' ? (find('supply', bottle)?.lot ?? '') : '';
  const source = id === 'spirit' ? (bottle ?? null) : null;
  return { into: 'drink', id: ids[id], name, source, lot, plannedG, massG, corrects: true };
}

interface Drink {
  readonly mass: Measured;
  /** g of it before, per g of it now. */
  readonly diluted: Measured;
  readonly now: Pick<Batch['drink'], 'litres' | 'brix' | 'abv' | 'densityGPerMl'>;
}

/** The drink by its masses: what was in it by weighing, and what came to it. */
function drinkWith(batch: Batch, added: readonly AddedNow[], spirit: number): Drink {
  const { drink } = batch;
  const pure = ethanolDensity(massFraction(1), REFERENCE_TEMPERATURE);
  const before = scaled(times(drink.litres, drink.densityGPerMl), 1000);
  const sum = (id: AddedNow['id']) => plus(exact(0), ...added.flatMap((one) => (one.id === id ? one.massG : [])));
  const mass = plus(before, ...added.map(({ massG }) => massG));
  const sugar = over(plus(scaled(times(before, drink.brix), 1 / 100), sum('sugar')), mass);
  const held = scaled(times(drink.abv, drink.litres), (1000 * pure) / 100); // g of ethanol
  const brought = plus(
    scaled(sum('spirit'), ethanolMassFraction(volumeFraction(spirit / 100))),
    scaled(sum('concentrate'), ethanolInConcentrate(leftConcentrate(batch))),
  );
  const ethanol = over(plus(held, brought), mass);
  const densityGPerMl = densityWithin(sugar, ethanol);
  return {
    mass,
    diluted: over(before, mass),
    now: {
      densityGPerMl,
      brix: scaled(sugar, 100),
      abv: scaled(times(ethanol, densityGPerMl), 100 / pure),
      litres: scaled(over(mass, densityGPerMl), 1 / 1000),
    },
  };
}

/** g of ethanol in a gram of it; one of which no one has said it counts as none here, as in the batch itself. */
function ethanolInConcentrate(vial: Vial | undefined): number {
  const carriers = vial ? carriersOf(vial) : [];
  return carriers.reduce((sum, { share, ethanol }) => sum + share * (ethanol ?? 0), 0);
}

/** mg per kg and L of each material: less by what was added, more by the concentrate among it. */
function reachedWith(batch: Batch, added: readonly AddedNow[], drink: Drink): Batch['reached'] {
  const poured = plus(exact(0), ...added.flatMap(({ id, massG }) => (id === 'concentrate' ? massG : [])));
  const contents = leftConcentrate(batch)?.contents ?? [];
  return batch.reached.map((one) => {
    const strength = contents.find(({ material }) => material === one.material)?.strength ?? exact(0);
    const brought = scaled(over(times(poured, strength), drink.mass), PPM);
    const mgPerKg = plus(times(one.mgPerKg, drink.diluted), brought);
    return { ...one, mgPerKg, mgPerL: times(mgPerKg, drink.now.densityGPerMl) };
  });
}
