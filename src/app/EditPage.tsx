import { useSignal } from '@preact/signals';
import type { AnyRecord } from '../records/kinds';
import { keep } from '../records/shelf';
import { FieldInput } from '../ui/FieldInput';
import { editables } from './editable';
import { FormPage } from './FormPage';

type Typed = Readonly<Record<string, string>>;

/** The record with what was typed, or null while an answer will not do. */
function changed(record: AnyRecord, typed: Typed): AnyRecord | null {
  let now = record;
  for (const { field, text, set } of editables(record)) {
    const answer = field.read(typed[field.name] ?? text);
    if (!answer.ok) return null;
    if (typed[field.name] !== undefined) now = set(now, answer.value);
  }
  return now;
}

/** Changes what stands on a bottle, a material, a vial's place. Strengths and masses are never changed by hand. */
export function EditPage({ record }: { record: AnyRecord }) {
  const typed = useSignal<Typed>({});
  const tried = useSignal(false);
  async function store(): Promise<boolean> {
    tried.value = true;
    const now = changed(record, typed.value);
    if (now) await keep([now]);
    return now !== null;
  }
  return (
    <FormPage title="Change" onKeep={store}>
      {editables(record).map(({ field, text }) => {
        const answer = field.read(typed.value[field.name] ?? text);
        return (
          <FieldInput
            key={field.name}
            field={field}
            text={typed.value[field.name] ?? text}
            problem={tried.value && !answer.ok ? answer.why : undefined}
            onText={(now) => (typed.value = { ...typed.value, [field.name]: now })}
          />
        );
      })}
    </FormPage>
  );
}
