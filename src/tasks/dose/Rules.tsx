import { useSignal } from '@preact/signals';
import { STATES, worstFirst, worstState, type Finding } from '../../core/limits/finding';
import { Sheet } from '../../ui/controls/Sheet';
import { againstText, stateWords } from '../../workshop/drinkable/limitRules';
import type { Judgement } from '../../workshop/drinkable/judging';
import type { Walk } from '../engine/task';
import { LimitsPanel } from '../shared/LimitsPanel';
import { toneOf } from '../shared/Verdict';

interface Props {
  walk: Walk;
  judgement: Judgement | null;
  /** What else is said in the sheet, one line each. */
  more: readonly string[];
}

/** What the rules say in one line; a touch opens all of it. */
export function Rules({ walk, judgement, more }: Props) {
  const open = useSignal(false);
  if (!judgement) return null;
  const state = worstState(judgement.findings);
  const { sign } = stateWords[state];
  return (
    <>
      <button class={`rules ${toneOf(state)}`} aria-haspopup="dialog" onClick={() => (open.value = true)}>
        <span>
          <span aria-hidden="true">{sign} </span>
          {glance(judgement)}
        </span>
        <span aria-hidden="true">›</span>
      </button>
      {open.value && (
        <Sheet title="What the rules say" onClose={() => (open.value = false)}>
          <LimitsPanel walk={walk} judgement={judgement} />
          {more.map((line) => (
            <p class="quiet">{line}</p>
          ))}
        </Sheet>
      )}
    </>
  );
}

/** 'over the EU limit: safrole, 1.2 of 1 mg/kg' */
function glance({ findings, jurisdiction }: Judgement): string {
  const state = worstState(findings);
  const [first] = [...findings].filter((one) => one.state === state).sort(worstFirst);
  const { words } = stateWords[state];
  if (!first || STATES.indexOf(state) > STATES.indexOf('look')) return `${jurisdiction} rules: ${words}`;
  return `${jurisdiction} rules: ${words}. ${reason(first)}`;
}

function reason(finding: Finding): string {
  const { what, state, rule } = finding;
  return state === 'prohibited' ? `${what}: ${rule}` : `${what} ${againstText(finding)}`;
}
