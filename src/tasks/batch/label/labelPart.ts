import { draftOf, ONLY_A_DRAFT } from '../../../workshop/drinkLabel/draft';
import type { DraftRow, DrinkToLabel } from '../../../workshop/drinkLabel/drinkToLabel';
import { judgeFields } from '../../shared/judgeRun';
import { answer } from '../../engine/answers';
import { chips } from '../../engine/card';
import type { RunState } from '../../engine/fold';
import type { KeepPart } from '../keeping/part';
import { keepAsked } from '../plan/keepAsked';

/** Rows of the draft that are in sight; the rest is folded away under them. */
const IN_SIGHT = ['Ingredients', 'Allergens', 'Alcohol', 'Warning', 'Its own law'];

/** The label of the drink as a draft that follows the recipe; what it says only where the page is shown, since that takes a while. */
export function labelPart(run: RunState, drink: DrinkToLabel | null): KeepPart {
  const { labelName, labelMl } = keepAsked(run);
  const [isNamed, isSized] = [(answer(run, labelName) ?? '') !== '', answer(run, labelMl) !== null];
  const named = isNamed ? ', named {label.name}' : '';
  const sized = isSized ? ', in bottles of {label.ml}' : '';
  const rows = drink ? draftOf(drink) : [];
  const inSight = rows.filter(({ what }) => IN_SIGHT.includes(what) || /^In \d/.test(what));
  return {
    ask: [labelName, labelMl],
    slots: {
      [labelName.name]: { missing: 'name on the label', optional: true },
      [labelMl.name]: { missing: 'bottle size', optional: true, usual: chips(['250', '330', '500', '700'], 'mL') },
    },
    section: {
      title: 'Label of the drink',
      sentence: `A draft under ${answer(run, judgeFields.jurisdiction)} law${named}${sized}`,
      chips: [labelName.name, labelMl.name],
      lines: inSight.map(({ what, words }) => `${what}: ${words}.`),
      folded: rows.length === 0 ? [] : foldedOf(rows, inSight),
    },
  };
}

/** The rest of the draft, what to know about all of it, and where the law says so. */
function foldedOf(rows: readonly DraftRow[], inSight: readonly DraftRow[]): string[] {
  const rest = rows.filter((row) => !inSight.includes(row));
  return [
    'The rest of the draft, and where the law says so.',
    ONLY_A_DRAFT,
    ...rest.map(({ what, words, notes }) => [`${what}: ${words}.`, ...notes].join(' ')),
    ...inSight.filter(({ notes }) => notes.length > 0).map(({ what, notes }) => `${what}: ${notes.join(' ')}`),
    ...new Set(rows.map(({ source }) => `${source}.`)),
  ];
}
