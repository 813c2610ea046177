import { useEffect, useRef } from 'preact/hooks';
import { Options } from './ChoiceField';
import { withLocalSign } from '../format';
import type { FieldFacts } from './field';

interface Props {
  field: FieldFacts;
  text: string;
  problem: string | undefined;
  /** May be a promise, which ends when the text is stored. `sure` is false while arrow keys pass over the options of a choice. */
  onText: (text: string, sure: boolean) => unknown;
}

/** A question with its unit beside it and, when the answer will not do, one sentence under it. */
export function FieldInput(props: Props) {
  return props.field.input === 'choice' ? <ChoiceField {...props} /> : <TextField {...props} />;
}

function TextField({ field, text, problem, onText }: Props) {
  const shown = field.input === 'decimal' ? withLocalSign(text) : text;
  const box = useRef<HTMLInputElement>(null);
  const onTheWay = useRef(0); // texts that are not stored yet
  useEffect(() => {
    // While it is being typed in, or its text is on the way to the disk, the box itself is right; the stored text follows it.
    if (box.current && box.current !== document.activeElement && onTheWay.current === 0) box.current.value = shown;
  }, [shown]);
  return (
    <label class="field">
      <span class="title">{field.title}</span>
      <span class="box">
        <input
          ref={box}
          name={field.name}
          {...(field.input === 'date' ? { type: 'date' } : {})}
          inputMode={field.input === 'decimal' || field.input === 'numeric' ? field.input : 'text'}
          autoComplete="off"
          autoCapitalize={field.input === 'text' ? 'sentences' : 'off'}
          enterKeyHint="done"
          defaultValue={shown}
          aria-invalid={problem ? 'true' : 'false'}
          aria-describedby={`${field.name}-note`}
          onInput={async (event) => {
            onTheWay.current++;
            await onText(event.currentTarget.value, true);
            onTheWay.current--;
          }}
        />
        {field.unit && <span class="unit">{field.unit}</span>}
      </span>
      <Note field={field} problem={problem} />
    </label>
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

function Note({ field, problem }: { field: FieldFacts; problem: string | undefined }) {
  return (
    <span id={`${field.name}-note`} class={problem ? 'note wrong' : 'note'} role={problem ? 'alert' : undefined}>
      {problem ?? field.help}
    </span>
  );
}
