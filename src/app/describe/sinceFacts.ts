import type { Batch } from '../../records/kind/batch';
import { formatDay, formatPlain, measuredText } from '../../ui/format';
import { attempt, Refused } from '../../workshop/attempt';
import { asideOf, bottleNumbers, filledOf } from '../../workshop/made/bottles';
import { besidePlan } from '../../workshop/made/measured';
import { sinceOf } from '../../workshop/made/since';
import { daysFrom, trialsOf } from '../../workshop/made/trials';
import { besideWords, foundWords, measuredWords, quantities } from './quantities';
import type { Description } from './description';

type Facts = NonNullable<Description['facts']>;

/** What happened to a batch since it was made, for paper and tables: its page has sections of its own for it. */
export function sinceFacts(batch: Batch): Facts {
  if (!batch.since) return [];
  return [...measuredFacts(batch), ...mendedFacts(batch), ...bottleFacts(batch), ...trialFacts(batch)];
}

function measuredFacts(batch: Batch): Facts {
  const all = attempt(() => besidePlan(batch));
  if (all instanceof Refused) return [];
  return all
    .filter(({ reading }) => reading !== null)
    .map((one) => [`Measured: ${quantities[one.of].name}`, measuredWords(one), besideWords(one)] as const);
}

function mendedFacts(batch: Batch): Facts {
  return sinceOf(batch, 'mended').map(({ at, added }) => [
    `Corrected ${formatDay(at)}`,
    added.map(({ name, massG }) => `${formatPlain(massG)} g of ${name}`).join(', '),
  ]);
}

function bottleFacts(batch: Batch): Facts {
  const { count, rest, next } = filledOf(batch);
  if (count === 0) return [];
  return [
    ['Bottles', `${count}, numbered to ${bottleNumbers(batch, next - 1, next - 1)}`],
    ['In no bottle', rest.value < 0 ? 'count again' : measuredText(rest, 'L')],
    ...asideOf(batch).map(
      ({ from, to, until, where }) =>
        [`Put aside: ${bottleNumbers(batch, from, to)}`, `until ${formatDay(until)}`, where] as const,
    ),
  ];
}

function trialFacts(batch: Batch): Facts {
  return trialsOf(batch).map(({ trial, row, seen, verdict }) => [
    `Trial: ${row?.name ?? trial.sort}`,
    [
      ...seen.map(
        ({ due, state, words }) =>
          `day ${daysFrom(trial.begun, due)}: ${foundWords[state].words.toLowerCase()}${words && `, ${words}`}`,
      ),
      verdict ? (verdict.passed ? 'passed' : 'failed') : 'not ended',
    ].join('; '),
    `${trial.under}; begun ${formatDay(trial.begun)}`,
  ]);
}
