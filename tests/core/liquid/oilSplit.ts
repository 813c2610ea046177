/**
 * A second program for what stays dissolved: instead of adding up shares it lets the oil form. Of each liquid part of it is in the water,
 * at most its solubility times its share of the oil (Raoult), the rest in the oil; the amount of oil is found by halving.
 * Units: mg/L and mg of oil per L of water; parts are counted by mass.
 */
export function oilThatForms(asked: readonly { mgPerL: number; solubility: number }[]): number {
  // With N mg/L of oil a part keeps c S / (S + N) in the water: its share of the oil is then c / (S + N), and these add to 1.
  const shares = (oil: number) => asked.reduce((sum, { mgPerL, solubility }) => sum + mgPerL / (solubility + oil), 0);
  if (shares(0) <= 1) return 0;
  let [low, high] = [0, asked.reduce((sum, { mgPerL }) => sum + mgPerL, 0)];
  for (let i = 0; i < 200; i++) {
    const middle = (low + high) / 2;
    if (shares(middle) > 1) low = middle;
    else high = middle;
  }
  return high;
}

/** Solubility in water with ethanol (volume share) and sucrose (mol/L), mg/L, written out anew from the published lines. */
export function solubilityAgain(
  water: number,
  { logKow, ethanol, sucrose, salting }: { logKow: number; ethanol: number; sucrose: number; salting: number },
): number {
  return Math.exp(Math.LN10 * (Math.log10(water) + (0.973 * logKow + 0.225) * ethanol - salting * sucrose));
}
