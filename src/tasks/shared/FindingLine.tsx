import type { Finding } from '../../core/limits/finding';
import { formatPlain } from '../../ui/format';
import { againstText, sourceWords, stateWords } from '../../workshop/drinkable/limitRules';
import { toneOf } from './Verdict';

/** One answer of the rules: sign, words, amount against maximum, what brings it, and where the figure was read. */
export function FindingLine({ finding }: { finding: Finding }) {
  const { check, state, what, figure, from, rule, others = [] } = finding;
  const { sign, words } = stateWords[state];
  const sources = from.filter((part) => !part.asSuch).map((part) => part.material);
  return (
    <li class={`finding ${toneOf(state)}`}>
      <span class="sign" aria-hidden="true">
        {sign}
      </span>
      <span>
        <b>{what}</b>: {words}
        {state !== 'unknown' && <span class="figures">{againstText(finding)}</span>}
        {others.length > 0 && (
          <small>of it: {others.map(({ who, times }) => `${who} ${formatPlain(times * 100, 2)} %`).join(', ')}</small>
        )}
        {sources.length > 0 && <small>in {[...new Set(sources)].join(', ')}, counted at its worst</small>}
        {rule && <small>{rule}</small>}
        {figure && <small>{sourceWords(check, figure)}</small>}
      </span>
    </li>
  );
}
