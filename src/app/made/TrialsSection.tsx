import type { Batch } from '../../records/kind/batch';
import { formatDay } from '../../ui/format';
import { daysFrom, trialsOf, type TrialNow } from '../../workshop/made/trials';
import { today } from '../../workshop/today';
import { foundWords } from '../describe/quantities';
import { go } from '../nav/route';

/** The trials of a batch that last: what is due when, what was found, and how it ended. */
export function TrialsSection({ batch }: { batch: Batch }) {
  const all = trialsOf(batch);
  return (
    <section>
      <h2>Trials that last</h2>
      {all.length > 0 && (
        <ul class="figures">
          {all.map((one) => (
            <li>
              <button onClick={() => go(['record', batch.id, 'look', one.trial.id])}>
                <span>{one.row?.name ?? one.trial.sort}</span>
                <b>{stateOf(one)}</b>
                <small>{storyOf(one)}</small>
              </button>
            </li>
          ))}
        </ul>
      )}
      <button class="second" onClick={() => go(['record', batch.id, 'trial'])}>
        Begin a trial
      </button>
    </section>
  );
}

/** How it ended, or when it is looked at next. */
export function stateOf({ verdict, next }: TrialNow): string {
  if (verdict) return verdict.passed ? 'passed' : 'failed';
  if (next === null) return 'all days through';
  return next <= today() ? 'due now' : `due ${formatDay(next)}`;
}

/** 'begun 2 Dec; day 7: as the control; day 14: slightly off, “flat”'. */
export function storyOf({ trial, seen, verdict }: TrialNow): string {
  return [
    `begun ${formatDay(trial.begun)}`,
    ...seen.map(
      ({ due, state, words }) =>
        `day ${daysFrom(trial.begun, due)}: ${foundWords[state].words.toLowerCase()}${words && `, “${words}”`}`,
    ),
    ...(verdict?.words ? [`“${verdict.words}”`] : []),
  ].join('; ');
}
