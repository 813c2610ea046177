import { useSignal } from '@preact/signals';
import type { AnyRecord } from '../../records/kind/kinds';
import { keep } from '../../records/shelf';
import { choice, words } from '../../tasks/engine/fields';
import { FieldInput } from '../../ui/controls/FieldInput';
import { decidedBy } from '../../workshop/drinkable/grade';
import { canBeMarked, marked, REASONS } from '../../workshop/drinkable/mark';
import { FormPage } from '../nav/FormPage';

const OTHER = 'other';
const options = [...REASONS.map((why) => ({ value: why, label: why })), { value: OTHER, label: 'another reason' }];
const fields = {
  reason: choice({ name: 'reason', title: 'Why?', options }),
  words: words({ name: 'words', title: 'In words', max: 200 }),
};

/** Marks a thing smell only, with the reason. It cannot be taken back. */
export function MarkPage({ record }: { record: AnyRecord }) {
  const reason = useSignal('');
  const typed = useSignal('');
  const tried = useSignal(false);
  const isOther = reason.value === OTHER;
  const answer = isOther ? fields.words.read(typed.value) : fields.reason.read(reason.value);
  const problem = tried.value && !answer.ok ? answer.why : undefined;
  const made = decidedBy(record.id).length;
  async function store(): Promise<boolean> {
    tried.value = true;
    if (!answer.ok || !canBeMarked(record)) return false;
    await keep([marked(record, answer.value, Date.now())]);
    return true;
  }
  return (
    <FormPage title="Mark smell only" onKeep={store}>
      <p>
        It never goes into a drink again, and nothing that is made of it. <b>This cannot be taken back.</b>
      </p>
      {made > 0 && <p>{made === 1 ? '1 thing was made of it' : `${made} things were made of it`}: smell only, too.</p>}
      <FieldInput
        field={fields.reason}
        text={reason.value}
        problem={isOther ? undefined : problem}
        onText={(text) => (reason.value = text)}
      />
      {isOther && (
        <FieldInput field={fields.words} text={typed.value} problem={problem} onText={(text) => (typed.value = text)} />
      )}
    </FormPage>
  );
}
