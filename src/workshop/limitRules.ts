import { cramerFinder } from '../core/limits/cramer';
import type { Figure, Trait } from '../core/limits/figure';
import type { State } from '../core/limits/finding';
import type { Rules } from '../core/limits/limits';
import { intakes } from '../tables/adi';
import { bansEu, limitsEu } from '../tables/limitsEu';
import { bansUs, limitsUs } from '../tables/limitsUs';
import { concerns, cramerClasses, cramerFromMemory, cramerMemory, cramerSource } from '../tables/concernThresholds';

/** All rules of the tables, of every jurisdiction. */
export const rules: Rules = {
  bans: [...bansEu, ...bansUs],
  limits: [...limitsEu, ...limitsUs],
  intakes,
  concerns,
  cramer: cramerFinder([
    { classes: cramerClasses, figure: cramerSource },
    { classes: cramerFromMemory, figure: cramerMemory },
  ]),
};

/** How a state is said, and the sign that is beside the words: colour is never the only one. */
export const stateWords: Readonly<Record<State, { sign: string; words: string }>> = {
  prohibited: { sign: '✕', words: 'not allowed' },
  over: { sign: '▲', words: 'over the limit' },
  near: { sign: '△', words: 'near the limit' },
  look: { sign: '?', words: 'needs a look' },
  check: { sign: '§', words: 'check the law' },
  unknown: { sign: '–', words: 'no figure found' },
  label: { sign: '¶', words: 'words on the label' },
  within: { sign: '✓', words: 'within' },
};

/** How far a figure was confirmed, in words. */
export const levelWords: Readonly<Record<Figure['level'], string>> = {
  primary: 'read in the law itself',
  secondary: 'second hand, quoted',
  replaced: 'read in the rule before this one: check the law',
  proposal: 'read in the proposal only: check the law',
  memory: 'not read: check the law',
};

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
