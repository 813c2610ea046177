import { Liking } from '../../ui/controls/Scale';
import type { RunState } from '../engine/fold';
import type { Step, Walk } from '../engine/task';

/** The liking under that name, for the Book. */
export function likingTold({ typed }: RunState, name: string): NonNullable<Step['told']> {
  return [['Liking', typed[name] ? `${typed[name]} of 9` : '–']];
}

/** The nine points of liking, kept under that name. */
export function drawLiking(name: string) {
  return (walk: Walk) => (
    <Liking
      chosen={Number(walk.state.value.typed[name]) || null}
      onChoose={(text) => void walk.happen({ type: 'typed', key: name, text })}
    />
  );
}
