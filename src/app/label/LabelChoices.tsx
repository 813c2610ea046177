import type { Field } from '../../tasks/engine/fields';
import { FieldInput } from '../../ui/controls/FieldInput';
import { useState } from 'preact/hooks';
import { ScreenMatch } from './LabelPreview';
import {
  firstField,
  labelPrinters,
  labelSizes,
  labelSetUp,
  ownFields,
  sheetFields,
  setUpLabel,
  setUpWords,
  wasSetUp,
} from './labelSetUp';

const papers = [
  { value: 'cut', label: 'Plain paper, to cut' },
  { value: 'labels', label: 'Sheet of labels' },
] as const;

/** The size and printer of last time in one line; opened, and the first time, what they may be. */
export function LabelChoices({ problems }: { problems: Record<string, string> }) {
  const [first] = useState(!wasSetUp());
  const wrong = Object.keys(problems).length > 0;
  return (
    <details class="match set-up" open={first || wrong}>
      <summary>{setUpWords()}</summary>
      <div class="label-choices">
        <Choices problems={problems} />
      </div>
    </details>
  );
}

/** Size, printer, and for sheets what kind of paper and where on it; by hand, the printer alone. Each keeps its place among the others, so that the chip that was just touched stays the same one and keeps the focus. */
function Choices({ problems }: { problems: Record<string, string> }) {
  const setUp = labelSetUp();
  const byHand = setUp['on'] === 'hand';
  const onSheet = labelPrinters.find(({ value }) => value === setUp['on'])?.sheet != null;
  const ask = (fields: readonly Field[]) => (
    <div class="pair">
      {fields.map((field) => (
        <FieldInput
          key={field.name}
          field={field}
          text={setUp[field.name] ?? ''}
          problem={problems[field.name]}
          onText={(text) => void setUpLabel(field.name, text)}
        />
      ))}
    </div>
  );
  return (
    <>
      {!byHand && <Chips name="size" title="Size, mm" options={labelSizes} />}
      {!byHand && setUp['size'] === 'own' && ask(ownFields)}
      <Chips name="on" title="Printed on" options={labelPrinters} />
      {!byHand && !onSheet && (
        <p class="quiet">Some phones print in a size of their own: then share or save the picture.</p>
      )}
      {onSheet && <Chips name="paper" title="Paper" options={papers} />}
      {onSheet && setUp['paper'] === 'labels' && ask(sheetFields)}
      {onSheet && ask([firstField])}
      {!byHand && <ScreenMatch />}
    </>
  );
}

interface ChipsProps {
  name: string;
  title: string;
  options: readonly { readonly value: string; readonly label: string }[];
}

/** One of several short words, side by side. */
function Chips({ name, title, options }: ChipsProps) {
  const chosen = labelSetUp()[name];
  return (
    <fieldset class="field label-chips">
      <legend class="title">{title}</legend>
      {options.map(({ value, label }) => (
        <label class={value === chosen ? 'choice chosen' : 'choice'}>
          <input
            type="radio"
            name={name}
            value={value}
            checked={value === chosen}
            onClick={() => void setUpLabel(name, value)}
          />
          {label}
        </label>
      ))}
    </fieldset>
  );
}
