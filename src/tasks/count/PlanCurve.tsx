import { nearness, percent, type Plans } from './plans';

const WIDTH = 328; // units of the picture, about CSS pixels on a small phone
const HEIGHT = 150;
const LEFT = 40; // room for the numbers of the axes
const BOTTOM = 24;
const RIGHT = 14;
const TOP = 12;
const ERRORS = [0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1]; // lines of the grid: fractions of the wish

/** Error of the worst line against the number of drops, as a falling staircase; the list beside it says the same in words. */
export function PlanCurve({ plans }: { plans: Plans }) {
  const { all, worth, chosen } = plans;
  const scale = scaleOf(plans);
  const [x, y] = [scale.x, scale.y];
  const steps = all.map(
    ({ drops, objective }, i) => `${i === 0 ? 'M' : 'H'}${x(drops)}${i === 0 ? ' ' : 'V'}${y(objective)}`,
  );
  return (
    <svg
      class="plan-curve"
      viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
      role="img"
      aria-label={`Error of the worst line against drops: ${worth.map(nearness).join('; ')}.`}
    >
      <Grid scale={scale} />
      <path class="stairs" d={`${steps.join('')}H${WIDTH - RIGHT}`} />
      {worth.map((point) => (
        <circle
          class={point === chosen ? 'point chosen' : 'point'}
          cx={x(point.drops)}
          cy={y(point.objective)}
          r={point === chosen ? 7 : 4}
        />
      ))}
      <text class="chosen-label" {...besidePoint(x(chosen.drops), y(chosen.objective))}>
        {chosen.drops} drops{chosen.recommended ? ', recommended' : ''}
      </text>
    </svg>
  );
}

/** Lines for round errors, numbers for round drops. */
function Grid({ scale }: { scale: ReturnType<typeof scaleOf> }) {
  return (
    <>
      {scale.errors.map((error) => (
        <g>
          <line class="grid" x1={LEFT} x2={WIDTH - RIGHT} y1={scale.y(error)} y2={scale.y(error)} />
          <text x={LEFT - 6} y={scale.y(error) + 4} text-anchor="end">
            {percent(error)}
          </text>
        </g>
      ))}
      {ticks(scale.most).map((drops) => (
        <text x={scale.x(drops)} y={HEIGHT - 6} text-anchor="middle">
          {drops}
        </text>
      ))}
    </>
  );
}

/** Drops across, evenly; errors upwards, each halving as far as the last. */
function scaleOf({ all }: Plans) {
  const most = all.at(-1)!.drops * 1.05;
  const least = all[0]!.drops;
  const [high, low] = [all[0]!.objective * 1.1, Math.max(1e-4, all.at(-1)!.objective * 0.9)];
  const span = Math.max(1, most - least);
  return {
    most,
    errors: ERRORS.filter((error) => error <= high && error >= low),
    x: (drops: number) => Math.round(LEFT + 8 + ((drops - least) / span) * (WIDTH - LEFT - RIGHT - 8)),
    y: (error: number) =>
      Math.round(TOP + (Math.log(high / Math.max(low, error)) / Math.log(high / low)) * (HEIGHT - TOP - BOTTOM)),
  };
}

/** Where the words of a point stand: above it to the right, where the stairs leave room; at the right end to the left. */
function besidePoint(x: number, y: number) {
  const right = x > 0.55 * WIDTH;
  return {
    x: right ? WIDTH - RIGHT : x + 10,
    y: Math.max(TOP, y - 12),
    'text-anchor': right ? 'end' : 'start',
  } as const;
}

/** Round numbers of drops under the picture, at most five. */
function ticks(most: number): number[] {
  const step = [1, 2, 5, 10, 20, 50, 100].find((size) => most / size <= 5) ?? 200;
  return Array.from({ length: Math.floor(most / step) }, (_, i) => (i + 1) * step);
}
