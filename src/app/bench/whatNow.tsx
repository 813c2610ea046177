import { list, shelf } from '../../records/shelf';
import { go } from '../nav/route';
import { startTask } from '../nav/startTask';
import './firstWay.css';

export { ApartLine } from '../apart/ApartLine';
export { DueList } from './DueList';
export { LabelsWaiting } from './LabelsWaiting';
export { linesNow, loadOpenings } from './linesNow';
export { placeOfRun } from './placeOfRun';

const steps = [
  { task: 'bottle', words: 'Add a bottle', hint: 'Three letters of its name', isDone: () => list('bottle').length > 0 },
  { task: 'dilute', words: 'Dilute it', hint: 'Your first vial', isDone: () => list('vial').length > 0 },
  { task: 'layer', words: 'Dip a strip', hint: 'And smell what you made', isDone: () => list('layering').length > 0 },
] as const;

/** Whether the way is known: a strip was dipped, or what comes after it was done without one. */
function knowsTheWay(): boolean {
  const trials = list('vial').some(({ sort, contents }) => sort === 'trial' || contents.length > 1);
  return trials || (['layering', 'tasting', 'batch', 'test'] as const).some((kind) => list(kind).length > 0);
}

/** The way of the first day, until its last step was done: a bottle, a vial, a strip. */
export function FirstWay() {
  if (knowsTheWay()) return null;
  const next = steps.findIndex(({ isDone }) => !isDone());
  return (
    <ol class="first-way" aria-label="The first steps">
      {steps.map(({ task, words, hint, isDone }, i) => (
        <li key={task} class={isDone() ? 'past' : i === next ? 'next' : ''}>
          <button class="entry" onClick={() => begin(task)}>
            <i aria-hidden="true">{isDone() ? '✓' : i + 1}</i>
            <b>{words}</b>
            <span>{isDone() ? 'Done' : hint}</span>
          </button>
        </li>
      ))}
    </ol>
  );
}

/** Begins the task of a step, or goes on with the run of it that is paused. */
function begin(task: string): void {
  const paused = shelf.openRuns.value.find((run) => run.task === task);
  if (paused) go(['run', paused.id]);
  else void startTask({ task, typed: {} });
}
