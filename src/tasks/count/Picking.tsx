import { PickRows } from '../../ui/controls/PickRows';
import type { Walk } from '../engine/task';
import { isPicked } from './fields';

interface Props {
  walk: Walk;
  items: readonly { id: string; code: string; name: string; what: string; smellOnly?: boolean }[];
  label: string;
}

/** What goes into the count, in the order picked: vials and bottles, or materials. */
export function Picking({ walk, items, label }: Props) {
  return (
    <PickRows
      label={label}
      items={items}
      picked={(id) => isPicked(walk.state.value, id)}
      onPick={(id, picked) => void walk.happen({ type: 'typed', key: `pick.${id}`, text: picked ? 'yes' : 'no' })}
    />
  );
}
