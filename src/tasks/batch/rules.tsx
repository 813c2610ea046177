import { isOver, worstState } from '../../core/limits/finding';
import type { Judgement } from '../../workshop/drinkable/judging';
import { stateWords } from '../../workshop/drinkable/limitRules';
import type { CardAnswer, Offer } from '../engine/task';
import { LimitsPanel } from '../shared/LimitsPanel';

/** What the rules say in a few words: green only where all of it is within, barred where it is over. */
export function withRules(answer: CardAnswer, judgement: Judgement | null): CardAnswer {
  if (!judgement) return answer;
  const state = worstState(judgement.findings);
  const words = `${judgement.jurisdiction} rules: ${stateWords[state].words}`;
  const barred = isOver({ state });
  const isSure = barred || state === 'within';
  return isSure ? { ...answer, grade: { words, barred } } : { ...answer, lines: [...answer.lines, words] };
}

/** All that the rules say, and why one goes on all the same. */
export function rulesOffer(judgement: Judgement | null): Offer[] {
  if (!judgement) return [];
  const title = 'What the rules say';
  return [{ words: 'Rules', sheet: { title, draw: (walk) => <LimitsPanel walk={walk} judgement={judgement} /> } }];
}
