import type { Option } from '../../ui/controls/field';
import { formatDay, formatTypedText } from '../../ui/format';
import { signIn, textOf, type Field } from './fields';
import type { RunState } from './fold';
import type { SlotFacts, Step } from './task';

/** A slot as it stands in a run. */
export interface Slot extends SlotFacts {
  readonly field: Field;
  readonly state: 'filled' | 'empty' | 'impossible' | 'fixed' | 'sought';
  readonly text: string;
  /** The answer itself, as it is typed. */
  readonly value: string;
}

/** A piece of a sentence: words, or the name of a field with the sign that ends it. */
export type Piece = { readonly words: string } | { readonly slot: string; readonly sign: string };

/** A sentence in pieces, in order. A comma or point behind a slot goes with it, so that no line begins with one. */
export function piecesOf(sentence: string): Piece[] {
  return [...sentence.matchAll(/\{([^}]+)\}([.,;:]?)|[^{]+/g)].map(([words, slot, sign = '']) =>
    slot === undefined ? { words } : { slot, sign },
  );
}

/** The slots of a card, in the order in which they are asked. */
export function slotsOf(run: RunState, { ask = [], card }: Pick<Step, 'ask' | 'card'>): Slot[] {
  return ask.map((field) => slotOf(run, field, card?.slots?.[field.name]));
}

/** The sentence of a card with what is in its slots, as it is read aloud and told in the Book. */
export function sentenceText(run: RunState, step: Pick<Step, 'ask' | 'card'>): string {
  const slots = slotsOf(run, step);
  const text = (name: string) => slots.find(({ field }) => field.name === name)?.text ?? '';
  return piecesOf(step.card!.said ?? step.card!.sentence)
    .map((piece) => ('words' in piece ? piece.words : `${text(piece.slot)}${piece.sign}`))
    .join('');
}

/** The slot of a field: what is in it, and whether that can be. */
export function slotOf(run: RunState, field: Field, facts: SlotFacts = {}): Slot {
  const text = textOf(run, field);
  const answer = field.read(text, signIn(run, field));
  const wrong = facts.wrong ?? (answer.ok || text.trim() === '' ? undefined : answer.why);
  const isNone = text.trim() === '' || (field.options?.every(({ value }) => value !== text) ?? false);
  const empty = answer.ok ? isNone && facts.shows === undefined && text.trim() === '' : isNone;
  const state = facts.sought ? 'sought' : facts.fixed ? 'fixed' : empty ? 'empty' : wrong ? 'impossible' : 'filled';
  const missing = facts.missing ?? field.title.toLowerCase();
  return {
    ...facts,
    ...(wrong && !empty ? { wrong } : {}),
    field,
    state,
    value: text,
    text: state === 'empty' ? missing : (facts.shows ?? shownIn(field, text)),
  };
}

/** An answer as a slot shows it: the short words of an option, a number with its unit, a day. */
function shownIn(field: Field, text: string): string {
  const option = field.options?.find(({ value }) => value === text);
  if (option) return option.short ?? option.label;
  if (field.input === 'date') return formatDay(text);
  if (field.input === 'text') return text;
  return [formatTypedText(text), field.unit].filter(Boolean).join(' ');
}

/** The first slot of a card that keeps it from being left; undefined when all are filled. */
export function firstOpen(slots: readonly Slot[]): Slot | undefined {
  return (
    slots.find(({ state, optional }) => state === 'empty' && !optional) ??
    slots.find(({ state }) => state === 'impossible')
  );
}

/** Usual values of a number, as chips of its sheet: written as the phone writes numbers, with their unit unless that is ''. */
export function chips(values: readonly string[], unit: string): Option[] {
  return values.map((value) => ({ value, label: `${formatTypedText(value)} ${unit}`.trim() }));
}
