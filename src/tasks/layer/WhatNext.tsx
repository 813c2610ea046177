import { useMemo } from 'preact/hooks';
import { list } from '../../records/shelf';
import type { RunState } from '../engine/fold';
import type { Walk } from '../engine/task';
import { PairTriangle } from './PairTriangle';
import { beginReading } from './readings';
import { inFan, stripsOf, toDip } from './strips';
import { poolOf, proposal, sizeOf, SIZES, takeJust, usesFan, type Proposal } from './together';
import { formatCount } from '../../ui/format';
import { tagOfId } from '../../workshop/labelled';

const NAMES: Readonly<Record<number, string>> = { 2: 'twos', 3: 'threes', 4: 'fours', 5: 'fives' };

/** Which strips to smell together next, and what has been smelled together so far. */
export function WhatNext({ walk }: { walk: Walk }) {
  const run = walk.state.value;
  const found = useMemo(() => proposal(run), [run]);
  if (!found) return <p class="quiet">Two vials at least: there is nothing to layer yet.</p>;
  return (
    <>
      <Choices walk={walk} />
      <Counted found={found} size={sizeOf(run)} />
      <Triangle run={run} found={found} />
      <button class="second" onClick={() => void walk.goTo('helps')}>
        Which ones help?
      </button>
    </>
  );
}

function Choices({ walk }: { walk: Walk }) {
  const run = walk.state.value;
  const fan = inFan(run).length;
  const pools = [
    ['fan', `In the fan, ${fan}`, usesFan(run)],
    ['shelf', `On the shelf, ${list('vial').length}`, !usesFan(run)],
  ] as const;
  return (
    <>
      {fan >= 3 && (
        <div class="tiles" role="group" aria-label="Of which vials">
          {pools.map(([pool, words, on]) => (
            <button
              class={on ? 'tile on' : 'tile'}
              aria-pressed={on}
              onClick={() => void walk.happen({ type: 'typed', key: 'next.pool', text: pool })}
            >
              {words}
            </button>
          ))}
        </div>
      )}
      <div class="tiles" role="group" aria-label="Strips at once">
        {SIZES.map((size) => (
          <button
            class={size === sizeOf(run) ? 'tile on' : 'tile'}
            aria-pressed={size === sizeOf(run)}
            onClick={() => void walk.happen({ type: 'typed', key: 'next.size', text: String(size) })}
          >
            {NAMES[size]}
          </button>
        ))}
      </div>
    </>
  );
}

function Counted({ found: { coverage, plan, possible }, size }: { found: Proposal; size: number }) {
  const plural = plan.atLeast === 1 ? 'layering' : 'layerings';
  return (
    <p>
      <b>
        {coverage.done} of {coverage.total} pairs smelled.
      </b>{' '}
      {plan.next
        ? `At least ${plan.atLeast} ${plural} to go; this plan takes ${plan.planned}.`
        : 'Every pair has met: swap by taste now.'}
      <small>
        {formatCount(possible)} different {NAMES[size]} are possible; pairs are covered by far fewer.
      </small>
    </p>
  );
}

function Triangle({ run, found: { coverage, vials } }: { run: RunState; found: Proposal }) {
  const { smells, vialOf } = poolOf(run);
  const ids = smells.map((smell) => vialOf.get(smell)!);
  const next = vials.map((id) => ids.indexOf(id));
  return <PairTriangle codes={ids.map((id) => tagOfId(id) ?? '')} times={coverage.times} next={next} />;
}

/** Takes the proposal up: smells it when its strips lie ready, else picks and dips it. */
export async function takeUp(walk: Walk): Promise<void> {
  const run = walk.state.peek();
  const vials = proposal(run)?.vials ?? [];
  if (usesFan(run)) {
    const { n, happenings } = beginReading(run, Date.now(), vials);
    if (await walk.happen(...happenings)) await walk.goTo(`reading.${n}`, true);
    return;
  }
  const dipped = stripsOf(run).some(({ dippedAt }) => dippedAt !== null);
  if (await walk.happen(...takeJust(run, vials)))
    await walk.goTo(!dipped ? 'pick' : toDip(walk.state.peek()).length > 0 ? 'dip' : 'fan', true);
}
