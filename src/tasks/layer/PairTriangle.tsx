import { letterScale, pageRoom } from '../../ui/plot/pictureRoom';

interface Props {
  codes: readonly string[];
  /** times[i][j]: how often the two were smelled together. */
  times: readonly (readonly number[])[];
  /** Places of the vials to smell next. */
  next: readonly number[];
}

const LETTERS = 14; // CSS px at the usual size
const SIGN = 0.62; // width of a letter over its size, taken wide
const SMALLEST_WITH_CODES = 11;

/** Every pair a cell: filled with its number when it was smelled, ringed when it comes next, empty when it is open. */
export function PairTriangle({ codes, times, next }: Props) {
  const [width, scale] = [pageRoom(), letterScale()];
  const label = Math.min(width / 2, SIGN * LETTERS * scale * (codes.at(-1)?.length ?? 0) + 3); // beside the last row
  const cell = Math.min(30 * scale, (width - label) / Math.max(1, codes.length - 1));
  const gap = cell > 14 ? 2 : 0.5;
  const done = times.reduce((sum, row, i) => sum + row.filter((n, j) => j < i && n > 0).length, 0);
  const cells = codes.flatMap((_, i) => Array.from({ length: i }, (__, j) => ({ i, j, n: times[i]![j]! })));
  return (
    <svg
      class="triangle"
      viewBox={`0 0 ${width} ${cell * codes.length}`}
      role="img"
      aria-label={`Pairs compared: ${done} of ${cells.length}. Next: ${next.map((i) => codes[i]).join(', ')}`}
    >
      {cells.map(({ i, j, n }) => (
        <g transform={`translate(${j * cell} ${i * cell})`}>
          <rect
            class={`${n > 0 ? 'met' : 'open'}${next.includes(i) && next.includes(j) ? ' next' : ''}`}
            width={cell - gap}
            height={cell - gap}
            rx={cell / 8}
          />
          {n > 0 && cell >= 18 && (
            <text class="times" x={(cell - gap) / 2} y={(cell - gap) / 2} font-size={Math.min(12 * scale, cell * 0.6)}>
              {n}
            </text>
          )}
        </g>
      ))}
      {cell >= SMALLEST_WITH_CODES &&
        codes.map((code, i) => (
          <text class="label" x={i * cell + 3} y={(i + 0.5) * cell} font-size={Math.min(LETTERS * scale, cell * 0.8)}>
            {code}
          </text>
        ))}
    </svg>
  );
}
