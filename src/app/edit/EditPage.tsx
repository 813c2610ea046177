import { useSignal } from '@preact/signals';
import { Fragment } from 'preact';
import { isOf, type AnyRecord } from '../../records/kind/kinds';
import { keep } from '../../records/shelf';
import { FieldInput } from '../../ui/controls/FieldInput';
import { changed, editables } from './editable';
import { MORE_THRESHOLDS } from './editableThresholds';
import type { Typed } from './editing';
import { FormPage } from '../nav/FormPage';

/** Changes what stands on a bottle, a material, a vial's place. Strengths and masses are never changed by hand. */
export function EditPage({ record }: { record: AnyRecord }) {
  const typed = useSignal<Typed>({});
  const tried = useSignal(false);
  const type = (name: string, text: string) => void (typed.value = { ...typed.value, [name]: text });
  async function store(): Promise<boolean> {
    tried.value = true;
    const now = changed(record, typed.value);
    if (now) await keep([now]);
    return now !== null;
  }
  return (
    <FormPage title="Change" onKeep={store}>
      {editables(record, typed.value).map(({ field, text, part }) => {
        const answer = field.read(typed.value[field.name] ?? text);
        return (
          <Fragment key={field.name}>
            {part && <h2>{part}</h2>}
            <FieldInput
              field={field}
              text={typed.value[field.name] ?? text}
              problem={tried.value && !answer.ok ? answer.why : undefined}
              onText={(now) => type(field.name, now)}
            />
          </Fragment>
        );
      })}
      {isOf('material', record) && (
        <button
          class="second"
          onClick={() => type(MORE_THRESHOLDS, String(Number(typed.value[MORE_THRESHOLDS] ?? 0) + 1))}
        >
          Add an odour threshold
        </button>
      )}
    </FormPage>
  );
}
