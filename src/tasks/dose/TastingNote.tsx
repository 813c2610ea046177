import { Liking } from '../../ui/controls/Scale';
import { FieldInput } from '../../ui/controls/FieldInput';
import { answer } from '../engine/answers';
import { inRun, textOf } from '../engine/fields';
import type { RunState } from '../engine/fold';
import type { Offer, Step, Walk } from '../engine/task';
import { fields } from './fields';

/** The sheet of the tasting note: liking, and what the nose says. */
export const noteSheet: NonNullable<Offer['sheet']> = {
  title: 'Tasting note',
  draw: (walk) => <TastingNote walk={walk} />,
};

function TastingNote({ walk }: { walk: Walk }) {
  const run = walk.state.value;
  const field = inRun(run, fields.verdict);
  const text = textOf(run, field);
  const read = field.read(text);
  return (
    <>
      {drawLiking('liking')(walk)}
      <FieldInput
        field={field}
        text={text}
        problem={read.ok ? undefined : read.why}
        onText={(typed) => walk.happen({ type: 'typed', key: field.name, text: typed })}
      />
    </>
  );
}

/** The tasting note, for the Book. */
export function noteTold(run: RunState): [string, string][] {
  const words = answer(run, fields.verdict);
  return [...likingTold(run, 'liking'), ...(words ? [[fields.verdict.title, words] as [string, string]] : [])];
}

/** The liking under that name, for the Book. */
export function likingTold(run: RunState, name: string): [string, string][] {
  const liking = answer(run, fields.liking(name));
  return [['Liking', liking === null ? '–' : `${liking} of 9`]];
}

/** The nine points of liking, kept under that name. */
export function drawLiking(name: string): NonNullable<Step['draw']> {
  return (walk) => (
    <Liking
      chosen={answer(walk.state.value, fields.liking(name))}
      onChoose={(text) => void walk.happen({ type: 'typed', key: name, text })}
    />
  );
}
