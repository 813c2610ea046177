import { Stepped } from '../../ui/controls/Stepped';
import type { Walk } from '../engine/task';
import { fields } from './fields';
import { givenDrops, laidIn } from './search';

/** What was really dropped of each vial: that is what the surface is fitted to. */
export function Had({ walk, n }: { walk: Walk; n: number }) {
  const run = walk.state.value;
  const drops = givenDrops(run, n) ?? [];
  return (
    <>
      {laidIn(run)!.vials.map(({ id, tag }, k) => (
        <Stepped
          key={id}
          title={tag}
          count={drops[k]!}
          onCount={(count) => void walk.happen({ type: 'typed', key: fields.had(n, k, tag).name, text: String(count) })}
        />
      ))}
    </>
  );
}
