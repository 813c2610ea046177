import { useMemo } from 'preact/hooks';
import { list } from '../../records/shelf';
import type { RunState } from '../engine/fold';
import type { Walk } from '../engine/task';
import { PairTriangle } from './PairTriangle';
import { fields } from './fields';
import { beginNote, closing, typed } from './notes';
import { inFan, stripsOf, toDip } from './strips';
import { poolOf, proposal, sizeOf, takeJust, usesFan, type Proposal } from './together';
import { formatCount } from '../../ui/format';
import { tagOfId } from '../../workshop/thing/labelled';

const SIZES = fields.size.options!;

/** 'twos', 'threes', … */
function nameOf(size: number): string {
  return SIZES.find(({ value }) => value === String(size))?.label ?? '';
}

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
              onClick={() => void walk.happen(typed(fields.pool, pool))}
            >
              {words}
            </button>
          ))}
        </div>
      )}
      <div class="tiles" role="group" aria-label="Strips at once">
        {SIZES.map(({ value, label }) => (
          <button
            class={value === String(sizeOf(run)) ? 'tile on' : 'tile'}
            aria-pressed={value === String(sizeOf(run))}
            onClick={() => void walk.happen(typed(fields.size, value))}
          >
            {label}
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
        {coverage.done} of {coverage.total} pairs compared.
      </b>{' '}
      {plan.next
        ? `At least ${plan.atLeast} ${plural} to go; this plan takes ${plan.planned}.`
        : 'Every pair was smelled: swap by taste now.'}
      <small>
        {size === 2
          ? 'A pair counts when just these two strips were smelled together, dry.'
          : `A pair counts here when it was among ${size} dry strips or fewer; a larger fan is one smell.`}{' '}
        {formatCount(possible)} different {nameOf(size)} are possible{size > 2 && '; pairs are covered by far fewer'}.
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
    if (await walk.happen(...closing(run), ...beginNote(run, Date.now(), vials).happenings))
      await walk.goTo('fan', true);
    return;
  }
  const dipped = stripsOf(run).some(({ dippedAt }) => dippedAt !== null);
  if (await walk.happen(...takeJust(run, vials)))
    await walk.goTo(!dipped ? 'pick' : toDip(walk.state.peek()).length > 0 ? 'dip' : 'fan', true);
}
