import { cramerFinder } from '../../core/limits/cramer';
import type { Figure, Trait } from '../../core/limits/figure';
import type { Finding, State } from '../../core/limits/finding';
import type { Rules } from '../../core/limits/limits';
import { intakes } from '../../tables/adi';
import { limitsCarriers } from '../../tables/limitsCarriers';
import { bansEu, limitsEu } from '../../tables/limitsEu';
import { bansUs, limitsUs } from '../../tables/limitsUs';
import { concerns, cramerClasses, cramerFromMemory, cramerMemory, cramerSource } from '../../tables/concernThresholds';
import { needless } from '../../tables/needless';
import { BESIDE_LIMIT, formatPlain, measuredText } from '../../ui/format';

/** All rules of the tables, of every jurisdiction. */
export const rules: Rules = {
  bans: [...bansEu, ...bansUs],
  limits: [...limitsEu, ...limitsUs, ...limitsCarriers],
  intakes,
  concerns,
  cramer: cramerFinder([
    { classes: cramerClasses, figure: cramerSource },
    { classes: cramerFromMemory, figure: cramerMemory },
  ]),
  needless: needless.map(({ cas }) => cas),
};

/** How a state is said, and the sign that is beside the words: colour is never the only one. */
export const stateWords: Readonly<Record<State, { sign: string; words: string }>> = {
  prohibited: { sign: '✕', words: 'not allowed' },
  over: { sign: '▲', words: 'over the limit' },
  at: { sign: '△', words: 'at the limit' },
  near: { sign: '△', words: 'near the limit' },
  look: { sign: '?', words: 'needs a look' },
  check: { sign: '§', words: 'check the law' },
  unknown: { sign: '–', words: 'no figure found' },
  label: { sign: '¶', words: 'words on the label' },
  within: { sign: '✓', words: 'within' },
};

/** What a figure of the law is, and how far it was confirmed. */
export const levelWords: Readonly<Record<Figure['level'], string>> = {
  primary: 'law, read',
  secondary: 'law, second hand',
  replaced: 'the law before this one: check the law',
  proposal: 'proposal of a law only: check the law',
  memory: 'law, not read: check the law',
};

/** What a figure of an authority is, and how far it was confirmed. */
const opinionWords: Readonly<Record<Figure['level'], string>> = {
  primary: 'opinion of an authority, read',
  secondary: 'opinion of an authority, second hand',
  replaced: 'opinion that another replaced: check it',
  proposal: 'draft of an opinion: check it',
  memory: 'opinion of an authority, not read: check it',
};

/** Where the figure of a finding was read, and what that is: law, or the opinion of an authority. */
export function sourceWords(check: Finding['check'], figure: Figure): string {
  const words = check === 'added' || check === 'limit' ? levelWords : opinionWords;
  return `${figure.source}${figure.asOf && `, ${figure.asOf}`} · ${words[figure.level]}`;
}

/** An amount beside its maximum, '1960 ± 10 mg/L of 1000 mg/L'; with a digit more where it is above and would read alike. */
export function againstText({ amount, max, unit }: Pick<Finding, 'amount' | 'max' | 'unit'>): string {
  if (max === null) return measuredText(amount, unit, BESIDE_LIMIT);
  const most = formatPlain(max, 3);
  const alike = amount.value > max && formatPlain(amount.value, 3) === most;
  return `${measuredText(amount, unit, alike ? {} : BESIDE_LIMIT)} of ${most} ${unit}`;
}

/** What may be asked of a drink, in words. */
export const traitWords: Readonly<Record<Trait, string>> = {
  cloudy: 'cloudy',
  carbonated: 'carbonated',
  mint: 'mint',
  'from Artemisia': 'made from wormwood',
  'citrus oil': 'with citrus oil',
  cola: 'cola',
  bitter: 'a bitter',
  liqueur: 'a liqueur',
  cider: 'cider',
  'no added sugar': 'no added sugar',
};
