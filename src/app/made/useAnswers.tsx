import { useSignal } from '@preact/signals';
import { answerIn, inRun, textOf, type Field } from '../../tasks/engine/fields';
import { freshRun, type RunState } from '../../tasks/engine/fold';
import { FieldInput } from '../../ui/controls/FieldInput';

/** What is typed into the fields of a form, how it reads, and the fields themselves. */
export interface Answers {
  /** The value of a field, null while its text is none. */
  readonly value: <T>(field: Field<T>) => T | null;
  /** Whether anything was typed into it. */
  readonly isTyped: (field: Field) => boolean;
  readonly input: (field: Field) => preact.JSX.Element;
  /** Says under each field what is wrong with it; true where nothing is. */
  readonly check: (...fields: readonly Field[]) => boolean;
}

/** The answers of a form that is on the screen. */
export function useAnswers(): Answers {
  const typed = useSignal<Record<string, string>>({});
  const isTried = useSignal(false);
  const run: RunState = { ...freshRun, typed: typed.value };
  const answer = <T,>(field: Field<T>) => answerIn(run, field);
  return {
    value(field) {
      const found = answer(field);
      return found.ok ? found.value : null;
    },
    isTyped: ({ name }) => typed.value[name] !== undefined,
    input(field) {
      const found = answer(field);
      return (
        <FieldInput
          key={field.name}
          field={inRun(run, field)}
          text={textOf(run, field)}
          problem={isTried.value && !found.ok ? found.why : undefined}
          onText={(text) => (typed.value = { ...typed.value, [field.name]: text })}
        />
      );
    },
    check(...fields) {
      isTried.value = true;
      return fields.every((field) => answer(field).ok);
    },
  };
}
