import { readNumber } from '../../core/number/typed';
import type { RunEvent } from '../../records/kind/run';
import type { Field } from '../../tasks/engine/fields';
import { fold, type RunState } from '../../tasks/engine/fold';
import { withPresets } from '../../tasks/engine/leaving';
import type { Step, Task } from '../../tasks/engine/task';
import { formatDay, formatGiven, formatTypedText } from '../../ui/format';

/** A step that was done: its instruction, what was answered or counted, and when (ISO 8601, UTC). */
export interface StoryLine {
  readonly say: string;
  readonly answers: readonly (readonly [title: string, text: string])[];
  readonly at: string;
}

/** What was done in a run, step by step, folded from its events. */
export function storyOf(task: Task, events: readonly RunEvent[]): StoryLine[] {
  const state = withPresets(task, { ...fold(events), told: true });
  return task.steps(state).flatMap((step) => {
    const at = state.done[step.key];
    return at ? [{ say: step.say, answers: answersOf(step, state), at }] : [];
  });
}

function answersOf({ ask = [], pad }: Step, state: RunState): StoryLine['answers'] {
  const counted = pad ? [['Drops', String(state.drops[pad.counter] ?? 0)] as const] : [];
  return [...ask.map((field) => [field.title, answerText(field, state)] as const), ...counted];
}

function shownText({ input }: Field, text: string): string {
  if (input === 'date') return formatDay(text);
  return input === 'decimal' || input === 'numeric' ? toldNumber(text) : text;
}

/** A number as it was typed; where it could be read in two ways, as it was read then. */
function toldNumber(text: string): string {
  const typed = readNumber(text);
  return typed.kind === 'two' ? formatGiven(typed.readings[1]) : formatTypedText(text);
}

function answerText(field: Field, state: RunState): string {
  const text = state.typed[field.name] ?? state.presets[field.name] ?? field.preset ?? '';
  const words = field.options?.find((option) => option.value === text)?.label ?? shownText(field, text);
  return field.unit && words ? `${words} ${field.unit}` : words || '–';
}
