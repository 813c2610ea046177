import { isOf, type AnyRecord } from '../../records/kind/kinds';
import type { Batch } from '../../records/kind/batch';
import { keep } from '../../records/shelf';
import { trials } from '../../tables/trials';
import { choice, day, words } from '../../tasks/engine/fields';
import { formatDay } from '../../ui/format';
import { withFact } from '../../workshop/made/since';
import { daysFrom, duesOf, rowOf, trialsOf, type TrialNow } from '../../workshop/made/trials';
import { tagOf } from '../../workshop/thing/labelled';
import { today } from '../../workshop/today';
import { foundWords } from '../describe/quantities';
import { FormPage } from '../nav/FormPage';
import { route } from '../nav/route';
import { startTask } from '../nav/startTask';
import { stateOf, storyOf } from './TrialsSection';
import { useAnswers } from './useAnswers';

const sortField = choice<string>({
  name: 'sort',
  title: 'What is tried',
  options: trials.map(({ id, name, under }) => ({ value: id, label: name, hint: under })),
});
const beginField = day({ name: 'begun', title: 'Begins', preset: today() });

/** Begins a trial of a batch that lasts. */
export function TrialPage({ record }: { record: AnyRecord }) {
  return isOf('batch', record) ? <Begin batch={record} /> : null;
}

function Begin({ batch }: { batch: Batch }) {
  const answers = useAnswers();
  const row = rowOf(answers.value(sortField) ?? '');
  const begun = answers.value(beginField);
  const dues = row && begun !== null ? duesOf(row, begun) : [];
  async function store(): Promise<boolean> {
    if (!answers.check(sortField, beginField) || !row || begun === null) return false;
    await keep([withFact(batch, { fact: 'trial', sort: row.id, under: row.under, begun, dues })]);
    return true;
  }
  return (
    <FormPage title="Begin a trial" onKeep={store}>
      {answers.input(sortField)}
      {answers.input(beginField)}
      {row && (
        <>
          <p>
            {row.looks} The control is kept {row.control}: {dues.length + 1} bottles here, as many there, so that none
            is opened twice.
          </p>
          <p role="status">Looked at on {dues.map((due) => formatDay(due)).join(', ')}.</p>
          <p class="quiet">Source: {row.source}.</p>
        </>
      )}
    </FormPage>
  );
}

const stateField = choice({
  name: 'state',
  title: 'Beside its control',
  options: [
    { value: 'as the control', label: foundWords['as the control'].words },
    { value: 'slightly off', label: foundWords['slightly off'].words },
    { value: 'clearly off', label: foundWords['clearly off'].words },
    { value: 'spoiled', label: foundWords.spoiled.words, hint: 'do not taste more of it' },
  ],
});
const wordsField = words({ name: 'words', title: 'In words', optional: true, max: 200 });
const endField = choice({
  name: 'end',
  title: 'The trial',
  preset: 'continues',
  options: [
    { value: 'continues', label: 'Continues' },
    { value: 'passed', label: 'Ends: passed' },
    { value: 'failed', label: 'Ends: failed' },
  ],
});

/** Writes down what was found of a trial on the day that is due. */
export function LookPage({ record }: { record: AnyRecord }) {
  const found = isOf('batch', record) ? trialsOf(record).find(({ trial }) => trial.id === route.value[3]) : undefined;
  return isOf('batch', record) && found ? <Look batch={record} found={found} /> : null;
}

function Look({ batch, found }: { batch: Batch; found: TrialNow }) {
  const answers = useAnswers();
  const { trial, row, next } = found;
  const title = row?.name ?? trial.sort;
  async function store(): Promise<boolean> {
    if (next === null) return true;
    const [state, end] = [answers.value(stateField), answers.value(endField)];
    if (!answers.check(stateField, wordsField, endField) || state === null || end === null) return false;
    const said = answers.value(wordsField) ?? '';
    const seen = withFact(batch, { fact: 'seen', trial: trial.id, due: next, state, words: said });
    const ended = { fact: 'verdict' as const, trial: trial.id, passed: end === 'passed', words: '' };
    await keep([end === 'continues' ? seen : withFact(seen, ended)]);
    return true;
  }
  return (
    <FormPage title={title} onKeep={store}>
      <p>
        {stateOf(found)}; {storyOf(found)}.
      </p>
      <p class="quiet">
        Kept {trial.under}. {row?.looks}
      </p>
      {next !== null && [stateField, wordsField, endField].map((field) => answers.input(field))}
      {next !== null && (
        <button class="second" onClick={() => void startTask({ task: 'blind', typed: blindOf(batch, found, next) })}>
          Compare them blind first
        </button>
      )}
    </FormPage>
  );
}

/** A triangle of the bottle under trial and its control. */
function blindOf(batch: Batch, { trial, row }: TrialNow, due: string): Record<string, string> {
  const day = daysFrom(trial.begun, due);
  const called = batch.code === undefined ? batch.name.slice(0, 12) : tagOf(batch).slice(0, 12);
  return {
    test: 'triangle',
    'sample.0': `${called}, control`,
    'sample.1': `${called}, ${row?.name.toLowerCase() ?? trial.sort}, day ${day}`.slice(0, 40),
  };
}
