import { list } from '../../records/shelf';
import { startTask } from '../nav/startTask';
import './firstWay.css';

export { DueList } from './DueList';
export { linesNow } from './linesNow';
export { placeOfRun } from './placeOfRun';

const ENOUGH = 3; // vials; our choice: whoever made so many knows the way

const steps = [
  { task: 'bottle', words: 'Add a bottle', hint: 'Three letters of its name', isDone: () => list('bottle').length > 0 },
  { task: 'dilute', words: 'Dilute it', hint: 'Your first vial', isDone: () => list('vial').length > 0 },
  { task: 'layer', words: 'Dip a strip', hint: 'And smell what you made', isDone: () => list('layering').length > 0 },
] as const;

/** The way of the first day, on a Bench on which nothing was done yet: a bottle, a vial, a strip. */
export function FirstWay() {
  const next = steps.findIndex(({ isDone }) => !isDone());
  if (next < 0 || list('vial').length >= ENOUGH || list('layering').length > 0) return null;
  return (
    <ol class="first-way" aria-label="The first steps">
      {steps.map(({ task, words, hint, isDone }, i) => (
        <li key={task} class={isDone() ? 'past' : i === next ? 'next' : ''}>
          <button class="entry" onClick={() => void startTask({ task, typed: {} })}>
            <i aria-hidden="true">{isDone() ? '✓' : i + 1}</i>
            <b>{words}</b>
            <span>{isDone() ? 'Done' : hint}</span>
          </button>
        </li>
      ))}
    </ol>
  );
}
