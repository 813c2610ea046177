/**
 * How a drink that was measured is brought to what was planned by adding alone: exact balance of masses. Nothing is taken out, so
 * the drink grows until what there is too much of is right. Arithmetic; densities are those of other files.
 */
import { propagate, standardUncertainty, type Measured } from '../number/measured';
import { Refusal } from '../text/refusal';

/** What of a drink can be brought to a target by adding it, g/g of the drink. */
export type Corrected = 'sugar' | 'ethanol' | 'acid' | 'concentrate';
/** All of them, in the order in which they are told. */
export const CORRECTED: readonly Corrected[] = ['sugar', 'ethanol', 'acid', 'concentrate'];

/** A drink as it is: g in all, and g/g of each. */
export interface DrinkNow {
  readonly mass: Measured;
  readonly shares: Readonly<Record<Corrected, Measured>>;
}

/** What is to be added, g: water, and of each that has a target; spirit stands for ethanol. */
export interface Mending {
  readonly water: Measured;
  readonly adds: Readonly<Partial<Record<Corrected, Measured>>>;
  /** g of drink afterwards. */
  readonly mass: Measured;
  /** What sets how much the drink grows: of this there is too much already. */
  readonly most: Corrected | 'water';
  /** g/g of each afterwards; of those without a target, what the rest leaves of them. */
  readonly shares: Readonly<Record<Corrected, number>>;
}

/** g to be added per g of what is wanted: pure but for the spirit, of `spirit` g of ethanol per g. */
interface Adders {
  readonly targets: Readonly<Partial<Record<Corrected, number>>>;
  readonly spirit: number;
}

/**
 * The least that has to be added so that every share with a target (g/g) reaches it: M′ = max M·xᵢ/tᵢ over what has a target, and over
 * the water, of which the spirit brings some; addᵢ = (M′tᵢ − M·xᵢ)/cᵢ. By arithmetic (mass balance); ± first-order with the same
 * component setting the size. Check: 20 kg at 7.4 % sugar to 7.0 % takes 20·(7.4/7.0 − 1) = 1.1429 kg of water.
 * @throws Refusal where there is some of what has a target of 0, or the spirit is too weak
 */
export function mendingOf(now: DrinkNow, targets: Adders['targets'], spirit = 1): Mending {
  const adders = { targets, spirit };
  const values = { mass: now.mass.value, shares: valuesOf(now.shares) };
  const sizes = sizesFor(values, adders);
  const [most, size] = sizes.reduce((best, one) => (one[1] > best[1] ? one : best));
  const spreadOf = (of: (added: Added) => number) => spread(now, values, (moved) => of(addedFor(moved, adders, most)));
  const wanted = CORRECTED.filter((id) => targets[id] !== undefined);
  return {
    water: spreadOf(({ water }) => water),
    adds: Object.fromEntries(wanted.map((id) => [id, spreadOf((added) => added.adds[id]!)])),
    mass: spreadOf((added) => added.mass),
    most,
    shares: Object.fromEntries(
      CORRECTED.map((id) => [id, targets[id] ?? (values.mass * values.shares[id]) / size]),
    ) as Record<Corrected, number>,
  };
}

/** Whether a share differs from its target by more than its own ± (k = 2). By definition of ±. */
export function isOff(share: Measured, target: number): boolean {
  return Math.abs(share.value - target) > 2 * standardUncertainty(share);
}

interface Values {
  readonly mass: number;
  readonly shares: Readonly<Record<Corrected, number>>;
}

interface Added {
  readonly mass: number;
  readonly water: number;
  readonly adds: Partial<Record<Corrected, number>>;
}

function valuesOf(shares: DrinkNow['shares']): Values['shares'] {
  return Object.fromEntries(CORRECTED.map((id) => [id, shares[id].value])) as Values['shares'];
}

function perGram(id: Corrected, spirit: number): number {
  return id === 'ethanol' ? 1 / spirit : 1;
}

/** g of drink that each would need by itself, nothing taken out. */
function sizesFor({ mass, shares }: Values, { targets, spirit }: Adders): (readonly [Corrected | 'water', number])[] {
  const wanted = CORRECTED.filter((id) => targets[id] !== undefined);
  const own = wanted.map((id) => {
    const target = targets[id]!;
    if (target > 0) return [id, (mass * shares[id]) / target] as const;
    if (shares[id] <= 0) return [id, 0] as const;
    throw new Refusal('what is in a drink cannot be taken out by adding: there is some, and the target is none');
  });
  const rest = (all: (id: Corrected) => number) =>
    1 - wanted.reduce((sum, id) => sum + all(id) * perGram(id, spirit), 0);
  const room = rest((id) => targets[id]!);
  const water = mass * rest((id) => shares[id]);
  if (room <= 0) throw new Refusal('the spirit is too weak for that: it brings more water than there is room for');
  return [...own, ['water', Math.max(mass, water / room)] as const];
}

function addedFor(values: Values, adders: Adders, most: Corrected | 'water'): Added {
  const size = sizesFor(values, adders).find(([id]) => id === most)![1];
  const adds: Partial<Record<Corrected, number>> = {};
  let water = size - values.mass;
  for (const id of CORRECTED) {
    const target = adders.targets[id];
    if (target === undefined) continue;
    const grams = (size * target - values.mass * values.shares[id]) * perGram(id, adders.spirit);
    adds[id] = id === most ? 0 : grams;
    water -= adds[id]!;
  }
  return { mass: size, water: most === 'water' ? 0 : water, adds };
}

/** A result with the uncertainty of mass and shares, by small steps. */
function spread(now: DrinkNow, values: Values, result: (moved: Values) => number): Measured {
  const here = result(values);
  const slope = (moved: Values, step: number) => (result(moved) - here) / step;
  const massStep = values.mass * 1e-6;
  return propagate(here, [
    [now.mass, slope({ ...values, mass: values.mass + massStep }, massStep)],
    ...CORRECTED.map((id) => {
      const step = 1e-7;
      const moved = { ...values, shares: { ...values.shares, [id]: values.shares[id] + step } };
      return [now.shares[id], slope(moved, step)] as const;
    }),
  ]);
}
