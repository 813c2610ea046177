import type { Field } from '../../tasks/engine/fields';
import { FieldInput } from '../../ui/controls/FieldInput';
import { ScreenMatch } from './LabelPreview';
import { firstField, labelPrinters, labelSizes, labelWish, ownFields, sheetFields, wishLabel } from './labelWish';

const papers = [
  { value: 'cut', words: 'Plain paper, to cut' },
  { value: 'labels', words: 'Sheet of labels' },
] as const;

/** Size, printer, and for sheets what kind of paper and where on it. */
export function LabelChoices({ problems }: { problems: Record<string, string> }) {
  const wish = labelWish();
  const onSheet = labelPrinters.find(({ value }) => value === wish['on'])?.sheet != null;
  const ask = (fields: readonly Field[]) => (
    <div class="pair">
      {fields.map((field) => (
        <FieldInput
          key={field.name}
          field={field}
          text={wish[field.name] ?? ''}
          problem={problems[field.name]}
          onText={(text) => void wishLabel(field.name, text)}
        />
      ))}
    </div>
  );
  return (
    <>
      <Chips name="size" title="Size, mm" options={labelSizes} />
      {wish['size'] === 'own' && ask(ownFields)}
      <Chips name="on" title="Printed on" options={labelPrinters} />
      {!onSheet && <p class="quiet">Some phones print in a size of their own: then share or save the picture.</p>}
      {onSheet && <Chips name="paper" title="Paper" options={papers} />}
      {onSheet && wish['paper'] === 'labels' && ask(sheetFields)}
      {onSheet && ask([firstField])}
      <ScreenMatch />
    </>
  );
}

interface ChipsProps {
  name: string;
  title: string;
  options: readonly { readonly value: string; readonly words: string }[];
}

/** One of several short words, side by side. */
function Chips({ name, title, options }: ChipsProps) {
  const chosen = labelWish()[name];
  return (
    <fieldset class="field label-chips">
      <legend class="title">{title}</legend>
      {options.map(({ value, words }) => (
        <label class={value === chosen ? 'choice chosen' : 'choice'}>
          <input
            type="radio"
            name={name}
            value={value}
            checked={value === chosen}
            onClick={() => void wishLabel(name, value)}
          />
          {words}
        </label>
      ))}
    </fieldset>
  );
}
