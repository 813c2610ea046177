/**
 * The flavour concentrate: how strong it is, and how much of it goes into drink and syrup. Dosage D is g of concentrate per
 * litre of drink. Emulsions are dosed at 1–2 g/L (ingredient maker's sheets), liquid flavours at 0.5–1.5 g/L.
 * The rest is arithmetic of masses.
 */
import { concentrateStrength } from './dose';
import { gram, type Gram, type MassFraction, type Millilitre } from '../number/units';
import { Refusal } from '../text/refusal';

/** A line of a formula: its share (g/g) of all neat material; the shares add to one. */
export interface FormulaLine {
  readonly id: string;
  readonly share: MassFraction;
}

/** A concentrate of that many grams: g of each neat material and of the carrier that makes it up. */
export interface Concentrate {
  readonly mass: Gram;
  readonly strength: MassFraction;
  readonly lines: readonly { readonly id: string; readonly mass: Gram }[];
  readonly carrier: Gram;
}

/** Shares may miss one by rounding of typed percents. Our choice. */
const SHARE_SLACK = 1e-6;

/**
 * The concentrate for a volume of drink (mL) at `mgPerL` of the whole formula per litre and dosage D (g/L): w = c/(1000 D),
 * mass D × litres, the rest carrier. Source: mass balance. Check: 20 mg/L at 1 g/L is 2.0 %; 1000 L take 1.0 kg.
 * @throws Refusal when shares do not add to one, or the neat formula alone is more than the dosage
 */
export function concentrateFor(
  formula: readonly FormulaLine[],
  target: { mgPerL: number; gramsPerL: number; drink: Millilitre },
): Concentrate {
  const sum = formula.reduce((total, line) => total + line.share, 0);
  if (formula.some((line) => !(line.share >= 0)) || Math.abs(sum - 1) > SHARE_SLACK)
    throw new Refusal('the shares of a formula add to 100 %, not to {sum} %', {
      sum: { value: sum * 100, decimals: 3 },
    });
  const strength = concentrateStrength(target.mgPerL, target.gramsPerL);
  const mass = (target.gramsPerL * target.drink) / 1000; // mL per L
  const lines = formula.map(({ id, share }) => ({ id, mass: gram((mass * strength * share) / sum) }));
  return { mass: gram(mass), strength, lines, carrier: gram(mass * (1 - strength)) };
}
