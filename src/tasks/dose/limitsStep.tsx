import { worstState } from '../../core/limits/finding';
import type { RunState } from '../engine/fold';
import { asksWhy } from '../shared/goingOn';
import { LimitsPanel } from '../shared/LimitsPanel';
import { stateWords } from '../../workshop/drinkable/limitRules';
import type { Step } from '../engine/task';
import { outcome } from '../../workshop/attempt';
import { unknownWords } from '../../workshop/thing/alcohol';
import { alcoholIsUnknown, type Glass } from './glass';
import { judgeGlass } from './parts';

/** What the rules say of a glass. Who goes on over a limit says why: Minim warns. */
export function limitsStep(run: RunState, glass: Glass | null, more: string): Step {
  const { value: judgement } = outcome(() => glass && judgeGlass(run, glass));
  const unknown = glass ? alcoholIsUnknown(glass) : [];
  const worst = judgement && worstState(judgement.findings);
  return {
    key: 'limits',
    say: worst ? `The rules say: ‹${stateWords[worst].words}›.` : 'What the rules say.',
    more: [more, ...(unknown.length > 0 ? [`Alcohol: ‹not known›. ${unknownWords(unknown)}`] : [])],
    ...asksWhy(run, judgement),
    draw: (walk) => <LimitsPanel walk={walk} judgement={judgement} />,
    done: 'Seen',
  };
}
