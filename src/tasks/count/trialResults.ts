import { exact, expanded, minus, over, scaled, type Measured } from '../../core/number/measured';
import { PPM } from '../../core/number/units';
import { formatPlain, measuredText } from '../../ui/format';
import type { Result } from '../../ui/controls/result';
import { dropsText } from '../../workshop/dropWords';
import type { TargetLine } from './planInstance';
import { percent } from './plans';
import type { Trial } from './trial';

/** What was asked for: lines by parts, and the mass in g of the drink that all of it goes into, if any. */
interface Asked {
  readonly targets: readonly TargetLine[];
  readonly drinkG: number | null;
}

/** How far the worst line is from its target, the true share of each material, how strong the trial is, and what it makes of its drink. */
export function trialResults(trial: Trial, { targets, drinkG }: Asked): Result[] {
  const inputs = inputsOf(trial);
  const target = targetShares(targets);
  const worst = targets.length > 1 ? worstResult(trial, targets, inputs) : [];
  const shares = trial.parts.map(({ material, name, share }) => ({
    label: `${name}, share of all neat material${target.has(material) ? ` (target ${formatPlain(target.get(material)! * 100, 3)} %)` : ''}`,
    amount: scaled(share, 100),
    unit: '% w/w',
    how: {
      words: [
        'Drops times the mass of a drop times the strength of the vial give the neat amount of each material; over the sum of them all that is its share.',
        'The scatter of single drops counts once for each vial. A calibration shared by vials shifts them all alike and largely cancels in the shares.',
        ...relativeWords(share),
      ],
      inputs,
    },
  }));
  const strength = {
    label: 'All neat material in the trial’s liquid',
    amount: scaled(over(trial.active, trial.total), 100),
    unit: '% w/w',
    how: { words: ['All neat material over the mass of all drops.'], inputs },
  };
  return [...worst, ...shares, strength, ...(drinkG === null ? [] : drinkResults(trial, drinkG, inputs))];
}

/** How large the ± of a share is beside the share, since vials are known to so many per cent of what they bring. */
function relativeWords(share: Measured): string[] {
  const relative = expanded(share) / share.value;
  return share.value > 0 && relative > 0 ? [`Its ± in % w/w is ${percent(relative)} of the share itself.`] : [];
}

type Inputs = Result['how']['inputs'];

function inputsOf(trial: Trial): Inputs {
  return trial.counted.flatMap(({ stock, drops, drop }) => [
    { words: stock.tag, text: `${dropsText(drops)}, ${measuredText(drop.mgPerDrop, 'mg each')}`, source: drop.source },
    ...stock.contents.map(({ name, strength }) => ({
      words: `${name} in ${stock.tag}`,
      text: measuredText(scaled(strength, 100), '% w/w'),
      source: stock.what,
    })),
  ]);
}

/** Share of all neat material that each material was to have, g/g. */
function targetShares(targets: readonly TargetLine[]): Map<string, number> {
  const all = targets.reduce((sum, { parts }) => sum + parts, 0);
  const shares = new Map<string, number>();
  for (const { material, parts } of targets) shares.set(material, (shares.get(material) ?? 0) + parts / all);
  return shares;
}

function worstResult(trial: Trial, targets: readonly TargetLine[], inputs: Inputs): Result[] {
  const target = targetShares(targets);
  const off = targets.map(({ material, name }) => {
    const share = trial.parts.find((part) => part.material === material)?.share ?? exact(0);
    return { name, amount: scaled(minus(over(share, exact(target.get(material)!)), exact(1)), 100) };
  });
  const worst = off.sort((a, b) => Math.abs(b.amount.value) - Math.abs(a.amount.value))[0];
  if (!worst) return [];
  const how = { words: ['True share over target share, less one; the material where that is largest.'], inputs };
  return [
    { label: `${worst.name} is furthest from its target, off by`, amount: worst.amount, unit: '% of its target', how },
  ];
}

function drinkResults(trial: Trial, drinkG: number, inputs: Inputs): Result[] {
  const grams = {
    words: 'Finished drink',
    text: `${formatPlain(drinkG)} g`,
    source: 'volume times density, as filled',
  };
  const how = {
    words: [
      'Neat material over the mass of the finished drink, all drops in it. How exactly it was filled is not in the ±.',
    ],
    inputs: [grams, ...inputs],
  };
  return [
    { label: 'All neat material in the drink', amount: scaled(trial.active, PPM / drinkG), unit: 'mg/kg', how },
    ...trial.parts.map(({ name, active }) => ({
      label: `${name} in the drink`,
      amount: scaled(active, PPM / drinkG),
      unit: 'mg/kg',
      how,
    })),
  ];
}
