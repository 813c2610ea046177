import { STATES, type Finding, type State } from '../../core/limits/finding';
import { BESIDE_LIMIT, formatPlain, measuredText } from '../../ui/format';
import { levelWords, stateWords } from '../../workshop/limitRules';

/** One answer of the rules: sign, words, amount against maximum, what brings it, and where the figure was read. */
export function FindingLine({ finding }: { finding: Finding }) {
  const { state, what, amount, max, unit, figure, from, rule } = finding;
  const { sign, words } = stateWords[state];
  const sources = from.filter((part) => !part.asSuch).map((part) => part.material);
  return (
    <li class={`finding ${toneOf(state)}`}>
      <span class="sign" aria-hidden="true">
        {sign}
      </span>
      <span>
        <b>{what}</b>: {words}
        {state !== 'unknown' && (
          <span class="figures">
            {measuredText(amount, unit, BESIDE_LIMIT)}
            {max === null ? '' : ` of ${formatPlain(max, 3)} ${unit}`}
          </span>
        )}
        {sources.length > 0 && <small>in {[...new Set(sources)].join(', ')}, counted at its worst</small>}
        {rule && <small>{rule}</small>}
        {figure && (
          <small>
            {figure.source}
            {figure.asOf && `, ${figure.asOf}`} · {levelWords[figure.level]}
          </small>
        )}
      </span>
    </li>
  );
}

/** Green only for what is within, red for what is over; the words and the sign say it too. */
function toneOf(state: State): string {
  if (state === 'within') return 'good';
  return STATES.indexOf(state) <= STATES.indexOf('over') ? 'bad' : 'open';
}
