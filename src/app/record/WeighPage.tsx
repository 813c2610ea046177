import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { measured, type Measured } from '../../core/number/measured';
import { typedText } from '../../core/number/typed';
import { netMass } from '../../core/dilution/weighing';
import { isOf, type AnyRecord } from '../../records/kind/kinds';
import { keep, newId } from '../../records/shelf';
import { isStocked, leftOf, type Stocked } from '../../records/stock';
import { attempt, Refused } from '../../workshop/attempt';
import { amount, inRun, textOf, whole, type Field } from '../../tasks/engine/fields';
import { freshRun } from '../../tasks/engine/fold';
import { FieldInput } from '../../ui/controls/FieldInput';
import { measuredText } from '../../ui/format';
import { leftText } from '../../ui/left';
import { FormPage } from '../nav/FormPage';

const step = amount({
  name: 'step',
  title: 'Readability of the scale',
  unit: 'g',
  above: 0,
  max: 10,
  preset: '0.01',
});

const fields = {
  gross: amount({ name: 'gross', title: 'The scale shows', unit: 'g', above: 0, max: 100_000, scale: step }),
  empty: (preset: string) =>
    amount({
      name: 'empty',
      title: 'The empty glass with its cap',
      unit: 'g',
      min: 0,
      max: 100_000,
      preset,
      scale: step,
      help: 'Weigh one of the same kind; it is kept for next time.',
    }),
  step,
  pieces: whole({ name: 'pieces', title: 'There are', unit: 'pieces', max: 1_000_000 }),
};

/** Corrects what is left of a thing by weighing it, or by counting. What stood there before stays in the record. */
export function WeighPage({ record }: { record: AnyRecord }) {
  return isStocked(record) ? <Weighing record={record} /> : null;
}

function Weighing({ record }: { record: Stocked }) {
  const typed = useSignal<Record<string, string>>({});
  const tried = useSignal(false);
  const run = { ...freshRun, typed: typed.value };
  const asked = questions(record).map((field) => inRun(run, field));
  const answers = asked.map((field) => field.read(textOf(run, field)));
  const left = attempt(() => found(record, answers));
  const before = leftOf(record);
  async function store(): Promise<boolean> {
    tried.value = true;
    if (left === null || left instanceof Refused) return false;
    const empty = answers[1]?.ok ? { emptyG: answers[1].value } : {};
    const weighed = [...(record.weighed ?? []), { at: new Date().toISOString(), left }];
    await keep([{ ...record, ...empty, weighed }]);
    return true;
  }
  useEffect(() => document.querySelector<HTMLElement>('.form input')?.focus({ preventScroll: true }), []);
  return (
    <FormPage title="What is left?" onKeep={store}>
      {before && <p class="quiet">Reckoned from what was taken: {measuredLeft(before, unitOf(record))}.</p>}
      {asked.map((field, i) => (
        <FieldInput
          field={field}
          text={textOf(run, field)}
          problem={tried.value ? whyOf(answers[i]!) : undefined}
          onText={(text) => (typed.value = { ...typed.value, [field.name]: text })}
        />
      ))}
      {left && <Outcome left={left} unit={unitOf(record)} />}
    </FormPage>
  );
}

type Answer = ReturnType<Field<number>['read']>;

function whyOf(answer: Answer): string | undefined {
  return answer.ok ? undefined : answer.why;
}

function Outcome({ left, unit }: { left: Measured | Refused; unit: string }) {
  if (left instanceof Refused)
    return (
      <p class="trouble" role="alert">
        {left.problem}
      </p>
    );
  return (
    <p role="status">
      {leftText(left, unit) === 'empty' ? 'So it is empty.' : `So ${measuredText(left, unit)} are left.`}
    </p>
  );
}

function measuredLeft(left: Measured, unit: string): string {
  return leftText(left, unit) === 'empty' ? 'empty' : measuredText(left, unit);
}

function unitOf(record: Stocked): string {
  return isOf('supply', record) ? record.unit : 'g';
}

function questions(record: Stocked): Field<number>[] {
  if (unitOf(record) === 'pieces') return [fields.pieces];
  return [fields.gross, fields.empty(record.emptyG === undefined ? '' : typedText(record.emptyG)), fields.step];
}

/** What the answers say is left; null while one is missing. @throws Refusal when the glass weighs more than all */
function found(record: Stocked, answers: readonly Answer[]): Measured | null {
  const values = answers.map((answer) => (answer.ok ? answer.value : null));
  if (values.includes(null)) return null;
  const [gross, empty, step] = values as number[];
  const source = { id: `weighed:${newId()}`, words: 'weighing what is left' };
  if (unitOf(record) === 'pieces') return measured(gross!, 0, source);
  return netMass({ grossG: gross!, tareG: empty!, readabilityG: step! }, source);
}
