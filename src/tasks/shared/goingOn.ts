import { isOver } from '../../core/limits/finding';
import { Refusal } from '../../core/text/refusal';
import { overWords } from '../../workshop/drinkable/overNow';
import type { Judgement } from '../../workshop/drinkable/judging';
import { answer } from '../engine/answers';
import { valueOf, words } from '../engine/fields';
import type { RunState } from '../engine/fold';
import type { Step } from '../engine/task';

/** Why someone goes on with a drink that is over a limit; kept with the drink. */
export const although = words({
  name: 'although',
  title: 'Why continue all the same?',
  help: 'Page, label and sheet say that it is over the limit, and why you continued.',
  max: 120,
});

/** Reasons to tap. */
export const REASONS: readonly string[] = [
  'A trial: a sip, not for sale',
  'It will be diluted before it is drunk',
  'The rule was read: it does not apply here',
];

/** What a step asks that shows a judgement: the reason, where the drink is over a limit. The panel draws it. */
export function asksWhy(run: RunState, judgement: Judgement | null): Pick<Step, 'ask' | 'drawn' | 'problem'> {
  if (!judgement?.findings.some(isOver)) return {};
  const why = { ask: [although], drawn: [although.name] };
  return valueOf(run, although) === null ? { ...why, problem: WHY } : why;
}

const WHY = 'Over a limit: tap or type a reason, or change the drink.';

/** How the Book tells why someone went on over a limit; nothing of a drink that is over none. */
export function toldWhy(run: RunState, judgement: Judgement | null): NonNullable<Step['told']> {
  return judgement?.findings.some(isOver) ? [[although.title, answer(run, although) ?? '–']] : [];
}

/** The reason to be kept with a drink; undefined for one that is over nothing. @throws Refusal when it is over a limit and no reason was given */
export function reasonFor(run: RunState, judgement: Judgement | null): string | undefined {
  const over = judgement?.findings.find(isOver);
  if (!judgement || !over) return undefined;
  const reason = valueOf(run, although);
  if (reason === null)
    throw new Refusal('this drink is {over}: go back to what the rules say, and give a reason or change the drink', {
      over: overWords({ finding: over, jurisdiction: judgement.jurisdiction }),
    });
  return reason;
}
