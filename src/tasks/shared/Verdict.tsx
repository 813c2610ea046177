import { isOver, STATES, worstFirst, worstState, type Finding, type State } from '../../core/limits/finding';
import { formatPlain } from '../../ui/format';
import { againstText, stateWords } from '../../workshop/drinkable/limitRules';
import type { Judgement } from '../../workshop/drinkable/judging';

/** As many findings as are read at a glance; our choice. */
const AT_A_GLANCE = 4;
/** So small a share of what is dosed is not told; our choice. */
const LITTLE = 0.005;

/** The figures that make it fit, near, over or to be checked, in one box, and what is not known. */
export function Verdict({ judgement }: { judgement: Judgement }) {
  const { findings } = judgement;
  const worst = worstState(findings);
  const telling = findings.filter(({ state }) => STATES.indexOf(state) <= STATES.indexOf('look')).sort(worstFirst);
  const shown = telling.filter(({ check }) => check !== 'concern').slice(0, AT_A_GLANCE);
  return (
    <section class={`verdict ${toneOf(worst)}`}>
      {isOver({ state: worst }) && <h3>Not fit for drinks</h3>}
      <ul>
        {shown.map((one) => (
          <Line finding={one} />
        ))}
        {openIn(judgement).map((words) => (
          <li class="quiet">{words}</li>
        ))}
        {worst === 'within' && <li>✓ Within every figure that was found.</li>}
      </ul>
    </section>
  );
}

/** What is left to look into, and what is not known. */
function openIn({ findings, silent, unknown }: Judgement): string[] {
  const concerns = findings.filter(({ check }) => check === 'concern');
  const looks = concerns.filter(({ state }) => STATES.indexOf(state) <= STATES.indexOf('look')).length;
  const unread = findings.filter(({ check, state }) => check !== 'concern' && state === 'check').length;
  const unclassed = concerns.filter(({ state }) => state === 'unknown').length;
  return [
    unread > 0 && `§ ${unread} ${unread === 1 ? 'figure was' : 'figures were'} not read in the law: check it.`,
    looks > 0 && `? ${looks} near or above a threshold of concern: look into it.`,
    unclassed > 0 &&
      `– No threshold of concern was found for ${unclassed} ${unclassed === 1 ? 'substance' : 'substances'}.`,
    unknown >= LITTLE && `– Nothing is known of ${formatPlain(unknown * 100, 2)} % of what is dosed.`,
    silent.length > 0 && `– No CAS number, so nothing can be looked up: ${silent.join(', ')}. It may still be limited.`,
  ].filter((words) => words !== false);
}

function Line({ finding }: { finding: Finding }) {
  const { what, state, check, rule, others = [] } = finding;
  const { sign, words } = stateWords[state];
  const theirs = others
    .filter(({ times }) => times > 1)
    .map(({ who, times }) => `${who} ${formatPlain(times * 100, 2)} %`);
  const figures = state === 'look' && theirs.length > 0 ? theirs.join(', ') : againstText(finding);
  return (
    <li>
      <span aria-hidden="true">{sign}</span> <b>{what}</b>:{' '}
      {check === 'intake' ? words.replace('the limit', 'its daily intake') : words},{' '}
      {state === 'prohibited' ? rule : figures}
    </li>
  );
}

/** Green only for what is within, red for what is over; words and sign say it too. */
export function toneOf(state: State): 'good' | 'bad' | 'open' {
  if (state === 'within') return 'good';
  return STATES.indexOf(state) <= STATES.indexOf('over') ? 'bad' : 'open';
}
