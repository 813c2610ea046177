import { useEffect } from 'preact/hooks';
import { foundByShortId, foundByTyping, shortIdInCode } from '../../records/kind/shortId';
import { Later } from '../../ui/controls/Later';
import { Say } from '../../ui/controls/Say';
import { onBack } from '../../ui/device/backEntry';
import type { RunState } from '../engine/fold';
import { allLabelled, calledOf, labelTagOf, tagOf, type Labelled } from '../../workshop/thing/labelled';
import type { Pad, Step, Walk } from '../engine/task';
import '../shared/labelCheck.css';

type Expected = NonNullable<Pad['expects']>;

/** Name of what was scanned at a step: the id of a record, or '' when the check was passed over. */
function scanKey(step: Step): string {
  return `label.${step.key}`;
}

/** What the last scan at a step said of the thing in the hand. */
export function labelVerdict(state: RunState, step: Step): 'right' | 'wrong' | 'unknown' {
  const scanned = state.typed[scanKey(step)] ?? '';
  if (!step.pad?.expects || scanned === '') return 'unknown';
  return scanned === step.pad.expects.id ? 'right' : 'wrong';
}

/** Offers to check the label before the first drop falls. */
export function LabelButton({ state, step, onScan }: { state: RunState; step: Step; onScan: () => void }) {
  const right = labelVerdict(state, step) === 'right';
  return (
    <button class={right ? 'second label-right' : 'second'} onClick={onScan}>
      {right ? `✓ It is ${step.pad!.expects!.tag}` : 'Scan its label'}
    </button>
  );
}

/** Stands in place of the pad while the thing in the hand is the wrong one: nothing is counted of it. */
export function WrongThing({ walk, onScan }: { walk: Walk; onScan: () => void }) {
  const step = walk.step.value;
  const id = walk.state.value.typed[scanKey(step)];
  const record = allLabelled().find((one) => one.id === id);
  const name = record && calledOf(record).name;
  return (
    <div class="wrong-thing" role="alert">
      <p class="say">
        <Say text={`Stop: this is ‹${record ? tagOf(record) : 'something else'}›.`} />
      </p>
      <p>{name && `${name}. `}Put it back.</p>
      <p>
        <Say text={`Take ‹${step.pad!.expects!.tag}›.`} />
      </p>
      <button class="second" onClick={onScan}>
        Scan again
      </button>
      <button class="second" onClick={() => void walk.happen({ type: 'typed', key: scanKey(step), text: '' })}>
        Count without a label
      </button>
    </div>
  );
}

/** The camera, for as long as the label at a step is looked for. The phone's back closes it and nothing else. */
export function LabelScan({ walk, expects, onClose }: { walk: Walk; expects: Expected; onClose: () => void }) {
  useEffect(() => onBack(onClose), []);
  const decide = (id: string) => {
    void checked(walk, expects, id).then(onClose);
    return '';
  };
  const props = {
    title: `Is it ${expects.tag}?`,
    onCode: (text: string) => meaningOf(text, decide),
    find: (typed: string) => foundByTyping(typed, allLabelled().map(listed)),
    onPick: decide,
    onClose,
  };
  return (
    <main>
      <Later load={async () => (await import('../../ui/device/Scanner')).Scanner} props={props} />
    </main>
  );
}

/** Stores which thing is in the hand. */
function checked(walk: Walk, expects: Expected, id: string): Promise<boolean> {
  navigator.vibrate?.(id === expects.id ? 30 : [120, 60, 120]);
  return walk.happen({ type: 'typed', key: scanKey(walk.step.peek()), text: id });
}

/** A code that a hand-held reader typed at the pad is checked as one that the camera read; what is wrong with it is said. */
export function scanned(walk: Walk, code: string): { words: string } | null {
  const expects = walk.step.peek().pad?.expects;
  const wrong = expects ? meaningOf(code, (id) => (void checked(walk, expects, id), '')) : '';
  return wrong ? { words: wrong } : null;
}

/** What a scanned text comes to: hands on the id of the one thing that carries this label, or says why there is none. */
export function meaningOf(text: string, then: (id: string) => string): string {
  const shortId = shortIdInCode(text);
  if (shortId === null) return 'That is not a label of Minim.';
  const found = foundByShortId(shortId, allLabelled());
  if (found.length === 0) return 'Nothing on this Shelf has that label.';
  if (found.length > 1) return 'Two things on this Shelf share that label. Type the code that is written on it.';
  return then(found[0]!.id);
}

/** Something with a label, as a line of a list. */
export function listed(record: Labelled): { id: string; code: string; tag: string; words: string } {
  const { code, name } = calledOf(record);
  return { id: record.id, code, tag: labelTagOf(record), words: `${tagOf(record)} · ${name}` };
}
