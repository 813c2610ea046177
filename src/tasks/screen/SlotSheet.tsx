import type { VNode } from 'preact';
import { useState } from 'preact/hooks';
import { FieldInput } from '../../ui/controls/FieldInput';
import { OptionRows } from '../../ui/controls/OptionRows';
import { Sheet } from '../../ui/controls/Sheet';
import { readNumber } from '../../core/number/typed';
import { formatTyped } from '../../ui/format';
import { asTyped } from '../engine/answers';
import { inRun, textOf, type Field } from '../engine/fields';
import type { Slot } from '../engine/card';
import type { Option } from '../../ui/controls/field';
import type { Walk } from '../engine/task';

interface Props {
  walk: Walk;
  slot: Slot;
  onClose: () => void;
}

/** The sheet of a slot: one touch on an option or a usual value chooses and closes; a number can be stepped or typed. */
export function SlotSheet({ walk, slot, onClose }: Props): VNode {
  const { field, along = {}, offer } = slot;
  const type = ({ name }: Field, text: string) => walk.happen(...asTyped({ ...along, [name]: text }));
  const beside = <Beside walk={walk} slot={slot} onType={type} />;
  const choose = async (text: string) => {
    if (await type(field, text)) onClose();
  };
  return (
    <Sheet title={field.title} onClose={onClose}>
      {field.input === 'choice' ? (
        <>
          <OptionRows
            title={field.title}
            options={field.options ?? []}
            chosen={textOf(walk.state.value, field)}
            onChoose={(value) => void choose(value)}
          />
          {beside}
        </>
      ) : (
        <Typed
          walk={walk}
          slot={slot}
          beside={beside}
          onText={(text) => type(field, text)}
          onChoose={(text) => void choose(text)}
          onClose={onClose}
        />
      )}
      {offer && (
        <button
          class="second"
          onClick={() => void walk.happen(...asTyped(offer.type ?? {})).then((stored) => stored && onClose())}
        >
          {offer.words}
        </button>
      )}
    </Sheet>
  );
}

type Type = (field: Field, text: string) => unknown;

/** What is asked in the same sheet: a unit, what else is to be said of a thing. */
function Beside({ walk, slot: { beside = [] }, onType }: { walk: Walk; slot: Slot; onType: Type }) {
  return (
    <>
      {beside.map((one) => {
        const [field, text] = [inRun(walk.state.value, one), textOf(walk.state.value, one)];
        const answer = field.read(text);
        return (
          <FieldInput
            key={one.name}
            field={field}
            text={text}
            problem={answer.ok || text.trim() === '' ? undefined : answer.why}
            onText={(now) => onType(one, now)}
          />
        );
      })}
    </>
  );
}

interface TypedProps extends Props {
  beside: VNode;
  onText: (text: string) => unknown;
  onChoose: (text: string) => void;
}

/** A number, a word or a day: usual values to touch, the field to type in, and a button that closes. */
function Typed({ walk, slot, beside, onText, onChoose, onClose }: TypedProps) {
  const { field, usual = [], by } = slot;
  const [text, setText] = useState(textOf(walk.state.value, field)); // as it is typed: OK does not wait for the disk
  const take = (now: string) => {
    setText(now);
    return onText(now);
  };
  const answer = inRun(walk.state.value, field).read(text);
  const typedFirst = usual.length === 0 || !hasKeyboardOnScreen();
  return (
    <form
      class="sheet-rows"
      onSubmit={(event) => {
        event.preventDefault();
        if (answer.ok) onClose();
      }}
    >
      <Usual options={usual} chosen={text} first={!typedFirst} onChoose={onChoose} />
      <div class="steppers">
        {by !== undefined && <Stepper by={-by} text={text} onText={take} />}
        <FieldInput
          field={inRun(walk.state.value, field)}
          text={text}
          problem={answer.ok || text.trim() === '' ? undefined : answer.why}
          onText={take}
          focused={typedFirst}
        />
        {by !== undefined && <Stepper by={by} text={text} onText={take} />}
      </div>
      {beside}
      <button class="main" disabled={!answer.ok}>
        OK
      </button>
    </form>
  );
}

interface UsualProps {
  options: readonly Option[];
  chosen: string;
  /** Whether they have the focus when the sheet opens. */
  first: boolean;
  onChoose: (text: string) => void;
}

/** Usual values, one touch each. */
function Usual({ options, chosen, first, onChoose }: UsualProps) {
  if (options.length === 0) return null;
  return (
    <div class="usual" role="group" aria-label="Usual">
      {options.map(({ value, label }, i) => (
        <button
          key={value}
          type="button"
          aria-pressed={value === chosen}
          autofocus={first && i === 0}
          onClick={() => onChoose(value)}
        >
          {label}
        </button>
      ))}
    </div>
  );
}

/** Whether a keyboard comes up over half of the screen when a field takes the focus: usual values would be behind it. */
function hasKeyboardOnScreen(): boolean {
  return matchMedia('(pointer: coarse)').matches;
}

/** Less or more by one step; nothing at or below zero. */
function Stepper({ by, text, onText }: { by: number; text: string; onText: (text: string) => unknown }) {
  const read = readNumber(text);
  const next = read.kind === 'number' ? Number((read.value + by).toPrecision(12)) : NaN;
  return (
    <button
      type="button"
      aria-label={by < 0 ? 'Less' : 'More'}
      disabled={!(next > 0)}
      onClick={() => onText(formatTyped(next))}
    >
      {by < 0 ? '−' : '+'}
    </button>
  );
}
