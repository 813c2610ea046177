import { round, type Pen } from './Drawing';

/** Where a vial of a rack is: made, in hand now, or still to come. */
export type MakingState = 'made' | 'now' | 'next';

/** The sign of it at the foot: a tick, a full dot in a ring, an empty dashed ring. */
export function StateMark({ state, pen }: { state: MakingState; pen: Pen }) {
  const r = round(Math.min(34, Math.max(15, 9 / pen.pxPerUnit)));
  const [x, y] = [112 - r - 1, 199 - r];
  const at = (dx: number, dy: number) => `${round(x + dx * r)} ${round(y + dy * r)}`;
  return (
    <g class="state" stroke-width={round(0.2 * r)}>
      <circle cx={x} cy={y} r={round(0.9 * r)} />
      {state === 'made' && <path d={`M${at(-0.4, 0.05)}L${at(-0.1, 0.35)}L${at(0.42, -0.32)}`} />}
      {state === 'now' && <circle class="dot" cx={x} cy={y} r={round(0.4 * r)} />}
    </g>
  );
}
