import { Glass } from '../../ui/drawn/Ware';
import { outcome } from '../../workshop/attempt';
import type { RunState } from '../engine/fold';
import type { Walk } from '../engine/task';
import { abvLines } from './abvTerms';
import { judgeGlass } from './parts';
import { Rules } from './Rules';
import { blankOf, counterOf, isBlind, pouredOf, rungGlass, rungsOf, type Poured } from './series';
import './dose.css';

const SIZE = 64; // px high
const FULL = 0.8; // of the glass; our choice

/** The glasses of a series in a row, ticked off as they get their drops; `now` is the number of the one in hand, −1 for none. */
export function drawSeries(run: RunState, now: number) {
  const rungs = outcome(() => rungsOf(run)).value;
  if (!rungs) return null;
  const blank = blankOf(run, rungs);
  const poured: readonly Pick<Poured, 'k' | 'code' | 'rung'>[] = pouredOf(run, rungs) ?? [
    ...rungs.map((rung, k) => ({ k: k + 1, code: '', rung })),
    ...(blank ? [NO_CODE] : []),
  ];
  const drops = (one: Pick<Poured, 'k' | 'rung'>) => one.rung?.drops ?? (blank?.solvent ? blank.drops : 0);
  return (
    <ol class="glasses" aria-label="Glasses">
      {poured.map((one) => {
        const isDone = (run.drops[counterOf(one.k)] ?? 0) > 0 || counterOf(one.k) in run.done;
        const words = one.k === now ? 'now' : isDone ? 'poured' : one.k === 0 ? 'blank' : 'next';
        return (
          <li key={one.k} class={words} aria-current={one.k === now ? 'step' : undefined}>
            <Glass size={SIZE} level={FULL} />
            <b>{one.code || (isBlind(run) ? '?' : one.code)}</b>
            <span>{drops(one) === 0 ? 'no drops' : `${drops(one)}`}</span>
            <small>{isDone && one.k !== now ? '✓ poured' : words}</small>
          </li>
        );
      })}
    </ol>
  );
}

const NO_CODE = { k: 0, code: '', rung: null };

/** The glasses as they are planned, and what the rules say of the strongest. */
export function drawPlanned(walk: Walk) {
  const run = walk.state.value;
  const rungs = outcome(() => rungsOf(run)).value;
  const strongest = outcome(() => rungs && rungGlass(run, rungs.length, rungs.at(-1)!.drops)).value;
  if (!strongest) return null;
  return (
    <>
      {drawSeries(run, -1)}
      <Rules walk={walk} judgement={outcome(() => judgeGlass(run, strongest)).value} more={abvLines(strongest)} />
    </>
  );
}
