import { worstState } from '../../core/finding';
import type { RunState } from '../fold';
import { LimitsPanel } from '../LimitsPanel';
import { stateWords } from '../limitRules';
import type { Step } from '../task';
import { outcome } from './steps';
import type { Glass } from './glass';
import { judgeGlass } from './parts';

/** What the rules say of a glass. It never keeps anybody from going on: Minim warns. */
export function limitsStep(run: RunState, glass: Glass | null, more: string): Step {
  const { value: judgement } = outcome(() => glass && judgeGlass(run, glass));
  const worst = judgement && worstState(judgement.findings);
  return {
    key: 'limits',
    say: worst ? `The rules say: ‹${stateWords[worst].words}›.` : 'What the rules say.',
    more: [more],
    draw: (walk) => <LimitsPanel walk={walk} judgement={judgement} />,
    done: 'Seen',
  };
}
