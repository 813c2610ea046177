import type { ComponentChildren } from 'preact';
import { Boundary } from '../../ui/fault/Boundary';
import { FaultNotice } from '../../ui/fault/FaultNotice';
import type { Walk } from '../engine/task';

interface GuardProps {
  walk: Walk;
  /** What can still be asked when the task breaks on an answer, so that it can be changed. */
  questions: () => ComponentChildren;
  children: ComponentChildren;
}

/** Keeps a fault to the step that it is in: the head of the run, the way back and what is stored stay. */
export function GuardedStep({ walk, questions, children }: GuardProps) {
  const fault = walk.fault.value;
  return (
    <Boundary
      of={walk.state.value}
      otherwise={(error, again) => <BrokenStep walk={walk} words={brokenWords(walk)} error={error} again={again} />}
    >
      {fault ? (
        <BrokenStep
          walk={walk}
          words="Minim could not work out what follows from these answers; change one of them to continue."
          error={fault.error}
          again={() => {}} // it is worked out again by itself with each answer
        >
          {questions()}
        </BrokenStep>
      ) : (
        children
      )}
    </Boundary>
  );
}

function brokenWords({ task }: Walk): string {
  return task.recorded
    ? 'Something in Minim went wrong in this step; what you did in this run is stored.'
    : 'Something in Minim went wrong in this step; nothing that was stored is lost.';
}

interface Props {
  walk: Walk;
  words: string;
  error: unknown;
  again: () => void;
  children?: ComponentChildren;
}

/** In place of a step: what is known of the fault, and the way back. None on: a number may be missing that is needed there. */
function BrokenStep({ walk, words, error, again, children }: Props) {
  const before = walk.steps.value[walk.index.value - 1];
  return (
    <div class="body">
      <FaultNotice words={words} error={error} again={again}>
        {walk.trouble.value && <p class="trouble">{walk.trouble.value}</p>}
        {before && (
          <button class="main" onClick={() => void walk.goTo(before.key)}>
            The step before
          </button>
        )}
      </FaultNotice>
      {children}
    </div>
  );
}
