import { formatFixed } from '../format';
import { letterScale, pageRoom } from './pictureRoom';
import { scatterScale, type ScatterNumbers, type ScatterPoint, type ScatterScale } from './scatterScale';
import './scatter.css';

interface Props extends ScatterNumbers {
  /** What is drawn, and in which unit, as 'One drop, mg'. */
  title: string;
  /** What points and band are, in one sentence; their numbers follow it for those who cannot see the picture. */
  words: string;
}

/** Numbers as dots, with their ± where they have one, over the band that they make. */
export function Scatter({ title, words, points, band }: Props) {
  const scale = scatterScale({ points, band }, { room: pageRoom(), scale: letterScale() });
  const { width, height, left, right, letters, y } = scale;
  const told = points
    .map(({ name, value, uncertainty }) => `${name}: ${numberText(value, uncertainty, scale)}`)
    .join('; ');
  return (
    <figure class="scatter">
      <figcaption class="title">{title}</figcaption>
      <svg viewBox={`0 0 ${width} ${height}`} font-size={letters} role="img" aria-label={`${words} ${told}.`}>
        <rect
          class="band"
          x={left}
          y={y(band.value + band.uncertainty)}
          width={right - left}
          height={Math.max(1, y(band.value - band.uncertainty) - y(band.value + band.uncertainty))}
        />
        <Axes scale={scale} points={points} />
        <line class="mean" x1={left} x2={right} y1={y(band.value)} y2={y(band.value)} />
        {points.map((point, i) => (
          <Point point={point} x={scale.x(i)} scale={scale} />
        ))}
      </svg>
      <p class="quiet">{words}</p>
    </figure>
  );
}

function numberText(value: number, uncertainty: number | undefined, { decimals }: ScatterScale): string {
  const own = formatFixed(value, decimals + 1);
  return uncertainty === undefined ? own : `${own} ± ${formatFixed(uncertainty, decimals + 1)}`;
}

function Axes({ scale, points }: { scale: ScatterScale; points: readonly ScatterPoint[] }) {
  const { left, right, height, letters, ticks, decimals, named, x, y } = scale;
  return (
    <>
      {ticks.map((tick) => (
        <g>
          <line class="grid" x1={left} x2={right} y1={y(tick)} y2={y(tick)} />
          <text x={left - 0.4 * letters} y={y(tick) + letters / 3} text-anchor="end">
            {formatFixed(tick, decimals)}
          </text>
        </g>
      ))}
      {named.map((i) => (
        <text x={x(i)} y={height - letters / 3} text-anchor="middle">
          {points[i]!.name}
        </text>
      ))}
    </>
  );
}

function Point({
  point: { value, uncertainty, odd },
  x,
  scale: { y },
}: {
  point: ScatterPoint;
  x: number;
  scale: ScatterScale;
}) {
  return (
    <>
      {uncertainty !== undefined && (
        <path class="doubt" d={`M${x} ${y(value - uncertainty)}V${y(value + uncertainty)}`} />
      )}
      <circle class={odd ? 'point odd' : 'point'} cx={x} cy={y(value)} r="5" />
    </>
  );
}
