import type { RunEvent } from '../../records/kind/run';
import { readNumber } from '../../core/number/typed';
import { formatDay, formatGiven, formatTypedText } from '../../ui/format';
import { sentenceText } from './card';
import type { Field } from './fields';
import type { RunState } from './fold';
import { countingOf, type Step } from './task';

/** What the Book says of a step that was left: its instruction, and what was answered or counted there by then. */
export type Told = NonNullable<RunEvent['told']>;

/** A step in the words of this moment, with its answers and counts as they are now. */
export function toldOf(step: Step, state: RunState): Told {
  const counting = countingOf(step);
  const counted = counting ? [['Drops', String(state.drops[counting.counter] ?? 0)] as [string, string]] : [];
  const asked = (step.ask ?? []).map((field): [string, string] => [field.title, answerText(field, state)]);
  const drawn = (step.told ?? []).map(([title, text]): [string, string] => [title, text]);
  if (step.card) return { say: sentenceText(state, step), answers: [...drawn, ...counted] };
  return { say: step.say, answers: [...asked, ...drawn, ...counted] };
}

function answerText(field: Field, state: RunState): string {
  const text = state.typed[field.name] ?? state.presets[field.name] ?? field.preset ?? '';
  const words = field.options?.find((option) => option.value === text)?.label ?? shownText(field, text, state);
  return field.unit && words ? `${words} ${field.unit}` : words || '–';
}

function shownText(field: Field, text: string, state: RunState): string {
  if (field.input === 'date') return formatDay(text);
  return field.input === 'decimal' || field.input === 'numeric' ? numberText(field, text, state) : text;
}

/** A number as it was typed; where it could be read in two ways, as it was read then. */
function numberText(field: Field, text: string, state: RunState): string {
  const typed = readNumber(text);
  if (typed.kind !== 'two') return formatTypedText(text);
  const read = state.told ? null : field.read(text);
  return formatGiven(read?.ok && typeof read.value === 'number' ? read.value : typed.readings[1]);
}
