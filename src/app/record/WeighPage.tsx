import { useSignal, type Signal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { measured, type Measured } from '../../core/number/measured';
import { typedText } from '../../core/number/typed';
import { weighedNet } from '../../workshop/scales';
import { isOf, type AnyRecord } from '../../records/kind/kinds';
import { keep, newId } from '../../records/shelf';
import { isStocked, leftOf, type Stocked } from '../../records/stock';
import { attempt, Refused } from '../../workshop/attempt';
import { leftByWhole, missingIn, type Missing } from '../../workshop/thing/ageing';
import { amount, inRun, optionalAmount, textOf, whole, type Field } from '../../tasks/engine/fields';
import { freshRun } from '../../tasks/engine/fold';
import { FieldInput } from '../../ui/controls/FieldInput';
import { formatPlain, gramsText, measuredText } from '../../ui/format';
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
  whole: amount({
    name: 'gross',
    title: 'The scale shows',
    unit: 'g',
    above: 0,
    max: 100_000,
    scale: step,
    help: 'The whole vial, with its cap. Next time this shows what has evaporated.',
  }),
  noEmpty: (preset: string) =>
    optionalAmount({
      name: 'empty',
      title: 'The empty glass with its cap',
      unit: 'g',
      min: 0,
      max: 100_000,
      preset,
      help: 'Optional: without it the whole weight is kept for next time.',
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
  const gone = useSignal(false);
  const run = { ...freshRun, typed: typed.value };
  const asked = questions(record).map((field) => inRun(run, field));
  const answers = asked.map((field) => field.read(textOf(run, field)));
  const given = Object.fromEntries(asked.map(({ name }, i) => [name, answers[i]!.ok ? answers[i]!.value : null]));
  const left = attempt(() => found(record, given as Given));
  const before = leftOf(record);
  const missing = isOf('vial', record) && left && !(left instanceof Refused) ? missingIn(record, left) : null;
  async function store(): Promise<boolean> {
    tried.value = true;
    if (left === null || left instanceof Refused) return false;
    await keep([
      weighedAnew(record, { left, given: given as Given, stronger: gone.value ? missing?.stronger : undefined }),
    ]);
    return true;
  }
  useEffect(() => document.querySelector<HTMLElement>('.form input')?.focus({ preventScroll: true }), []);
  return (
    <FormPage title="What is left?" onKeep={store}>
      {before && <p class="quiet">Worked out from what was taken: {measuredLeft(before, unitOf(record))}.</p>}
      {asked.map((field, i) => (
        <FieldInput
          field={field}
          text={textOf(run, field)}
          problem={tried.value ? whyOf(answers[i]!) : undefined}
          onText={(text) => (typed.value = { ...typed.value, [field.name]: text })}
        />
      ))}
      {left && <Outcome left={left} unit={unitOf(record)} />}
      {missing && <Gone missing={missing} step={given['step'] ?? 0.01} yes={gone} />}
    </FormPage>
  );
}

/** More is missing than was taken: whether that evaporated is for the person to say. */
function Gone({ missing, step, yes }: { missing: Missing; step: number; yes: Signal<boolean> }) {
  const times = formatPlain(missing.stronger.value, 4);
  return (
    <label class={yes.value ? 'choice chosen' : 'choice'}>
      <input type="checkbox" checked={yes.value} onChange={() => (yes.value = !yes.value)} />
      <span>
        {gramsText(missing.missingG, step)} less than expected. If that evaporated, the vial is now {times} times as
        strong: tap here to count with it.
      </span>
    </label>
  );
}

/** The thing with one weighing more; of a vial its whole weight is kept too, and what evaporated as far as the person said so. */
function weighedAnew(
  record: Stocked,
  { left, given, stronger }: { left: Measured; given: Given; stronger: Measured | undefined },
): Stocked {
  const { gross, empty } = given;
  const entry = {
    at: new Date().toISOString(),
    left,
    ...(isOf('vial', record) && gross !== null ? { wholeG: gross } : {}),
    ...(stronger ? { stronger } : {}),
  };
  return { ...record, ...(empty == null ? {} : { emptyG: empty }), weighed: [...(record.weighed ?? []), entry] };
}

type Answer = ReturnType<Field<number | null>['read']>;
/** What was typed, by the name of its field; null what is missing. */
type Given = Readonly<Record<'gross' | 'empty' | 'step' | 'pieces', number | null>>;

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
      {leftText(left, unit) === 'empty' ? 'So it is empty.' : `So ${measuredText(left, unit)} is left.`}
    </p>
  );
}

function measuredLeft(left: Measured, unit: string): string {
  return leftText(left, unit) === 'empty' ? 'empty' : measuredText(left, unit);
}

function unitOf(record: Stocked): string {
  return isOf('supply', record) ? record.unit : 'g';
}

/** A vial that was weighed whole before needs no empty glass; one that was not may do without, for next time. */
function questions(record: Stocked): Field<number | null>[] {
  if (unitOf(record) === 'pieces') return [fields.pieces];
  const preset = record.emptyG === undefined ? '' : typedText(record.emptyG);
  if (!isOf('vial', record)) return [fields.gross, fields.empty(preset), fields.step];
  const known = (record.weighed ?? []).some(({ wholeG }) => wholeG !== undefined);
  return known ? [fields.whole, fields.step] : [fields.whole, fields.noEmpty(preset), fields.step];
}

/** What the answers say is left; null while one is missing. @throws Refusal when the glass weighs more than all */
function found(record: Stocked, { gross, empty, step, pieces }: Given): Measured | null {
  const source = { id: `weighed:${newId()}`, words: 'weighing what is left' };
  if (unitOf(record) === 'pieces') return pieces === null ? null : measured(pieces, 0, source);
  if (gross === null || step === null) return null;
  const byWhole = isOf('vial', record) ? leftByWhole(record, gross, { stepG: step, id: source.id }) : null;
  if (byWhole) return byWhole;
  if (empty == null) return isOf('vial', record) ? leftOf(record) : null; // kept as its whole weight
  return weighedNet({ grossG: gross, tareG: empty, readabilityG: step }, source);
}
