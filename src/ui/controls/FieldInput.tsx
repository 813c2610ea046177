import { useEffect, useRef, useState } from 'preact/hooks';
import { Options } from './ChoiceField';
import { isScaleHeard } from '../device/typingScale';
import { formatTypedText } from '../format';
import type { FieldFacts, Reading, ReadText } from './field';
import { useScaleLine, type LineSaid } from './useScaleLine';

interface Props {
  field: FieldFacts;
  text: string;
  problem: string | undefined;
  /** May be a promise, which ends when the text is stored. `sure` is false while arrow keys pass over the options of a choice. */
  onText: (text: string, sure: boolean) => unknown;
  /** It has the focus when its dialog opens. */
  focused?: boolean;
  /** Id of words that are read aloud with it. */
  about?: string;
}

/**
 * A question with its unit beside it and, when the answer will not do, one sentence under it. A number that can be read in two
 * ways has both under it, to tap.
 */
export function FieldInput(props: Props) {
  return props.field.input === 'choice' ? <ChoiceField {...props} /> : <TypedField {...props} />;
}

function TypedField({ field, text, problem, onText, focused = false, about = '' }: Props) {
  const [settled, setSettled] = useState<Reading>(); // the reading that was tapped last
  const read = text === field.preset ? undefined : field.read?.(text); // a preset has the point as decimal sign
  const shown = isNumber(field) && !read?.readings ? formatTypedText(text) : text;
  const { box, store } = useBox(shown, onText);
  const scale = useScaleLine({ field, box, text, store });
  const { wrong = problem, asks } = scale.said;
  const said = asks?.words ?? saidOf(read, settled?.text === text ? settled : undefined);
  function settle(reading: Reading, byKey: boolean) {
    setSettled(reading);
    box.current!.value = formatTypedText(reading.text);
    if (byKey) box.current!.focus(); // the buttons go; under a finger the keyboard need not come up again
    void store(reading.text);
  }
  return (
    <div class="typed">
      <label class="field">
        <span class="title">{field.title}</span>
        <span class="box">
          <input
            ref={box}
            {...attributesOf(field)}
            {...(field.input === 'date' ? { type: 'date' } : {})}
            defaultValue={shown}
            aria-invalid={wrong ? 'true' : 'false'}
            aria-describedby={`${about} ${field.name}-note`.trim()}
            autofocus={focused || (field.weighed && isScaleHeard())}
            onInput={(event) => store(event.currentTarget.value)}
            {...(field.weighed ? scale.hears : {})}
          />
          {field.unit && <span class="unit">{field.unit}</span>}
        </span>
      </label>
      <Note field={field} problem={wrong} said={said} />
      {asks && <Answers answers={asks.answers} />}
      {read?.readings && <Readings readings={read.readings} onSettle={settle} />}
    </div>
  );
}

/** What a box is by its field. One for a weight needs no keyboard on the screen where a scale types. */
function attributesOf(field: FieldFacts) {
  const byScale = Boolean(field.weighed) && isScaleHeard();
  return {
    name: field.name,
    inputMode: byScale ? 'none' : isNumber(field) ? field.input : 'text',
    autoComplete: 'off',
    autoCapitalize: field.input === 'text' ? 'sentences' : 'off',
    enterKeyHint: 'done',
    ...(field.weighed ? { 'data-weighed': '' } : {}),
  } as const;
}

/** The box of a question: what is typed in it is right until it is stored; then it follows the stored text. */
function useBox(shown: string, onText: Props['onText']) {
  const box = useRef<HTMLInputElement>(null);
  const onTheWay = useRef(0); // texts that are not stored yet
  useEffect(() => {
    if (box.current && box.current !== document.activeElement && onTheWay.current === 0) box.current.value = shown;
  }, [shown]);
  async function store(typed: string) {
    onTheWay.current++;
    await onText(typed, true);
    onTheWay.current--;
  }
  return { box, store };
}

function isNumber({ input }: FieldFacts): boolean {
  return input === 'decimal' || input === 'numeric';
}

/** What is said of how a number was read: a question where it has two readings, an echo where thousands were grouped. */
function saidOf(read: ReadText | undefined, settled: Reading | undefined): string | undefined {
  if (read?.readings) return 'This can be read in two ways. Which is it?';
  const words = settled?.words ?? read?.readAs;
  return words && `Read as ${words}.`;
}

interface ReadingsProps {
  readings: readonly Reading[];
  onSettle: (reading: Reading, byKey: boolean) => void;
}

/** The readings of a number, each a large button: one tap settles it. */
function Readings({ readings, onSettle }: ReadingsProps) {
  return (
    <div class="readings" role="group" aria-label="Which number is it?">
      {readings.map((reading) => (
        <button
          key={reading.text}
          type="button"
          class="second"
          onClick={(event) => onSettle(reading, event.detail === 0)}
        >
          {reading.words}
        </button>
      ))}
    </div>
  );
}

/** The answers to a question about the line that came. */
function Answers({ answers }: Pick<NonNullable<LineSaid['asks']>, 'answers'>) {
  return (
    <div class="readings" role="group" aria-label="Is that what the scale shows?">
      {answers.map(([words, does]) => (
        <button key={words} type="button" class="second" onClick={does}>
          {words}
        </button>
      ))}
    </div>
  );
}

function ChoiceField({ field, text, problem, onText }: Props) {
  return (
    <fieldset class="field choices" aria-describedby={`${field.name}-note`}>
      <legend class="title">{field.title}</legend>
      <Options field={field} text={text} onText={onText} />
      <Note field={field} problem={problem} />
    </fieldset>
  );
}

/** One line under a question: what is wrong, else how the number was read, else help. */
function Note({ field, problem, said }: { field: FieldFacts; problem: string | undefined; said?: string | undefined }) {
  const role = problem ? 'alert' : said ? 'status' : undefined;
  return (
    <span id={`${field.name}-note`} class={problem ? 'note wrong' : 'note'} role={role}>
      {problem ?? said ?? field.help}
    </span>
  );
}
