import { formatFixed } from '../format';
import { curvePlaces, type CurveNumbers, type CurvePlaces } from './curvePlaces';
import { letterScale, pageRoom } from './pictureRoom';
import './curvePicture.css';

interface Props extends CurveNumbers {
  /** What is drawn against what, with units. */
  title: string;
  /** What it shows, in one sentence. */
  words: string;
}

/** What depends on what, as a small curve with the place where one is. */
export function CurvePicture({ title, words, points, line, here }: Props) {
  if (points.length < 2) return null;
  const numbers = { points, ...(line ? { line } : {}), ...(here ? { here } : {}) };
  const places = curvePlaces(numbers, { room: pageRoom() - 32 * letterScale(), scale: letterScale() });
  const { width, height, left, right, letters, x, y } = places;
  const path = points.map((point) => `${x(point.x).toFixed(1)} ${y(point.y).toFixed(1)}`).join('L');
  return (
    <figure class="curve-picture">
      <figcaption class="quiet">{title}</figcaption>
      <svg viewBox={`0 0 ${width} ${height}`} font-size={letters} role="img" aria-label={`${title}. ${words}`}>
        <Axes places={places} />
        {line && (
          <>
            <line class="level" x1={left} x2={right} y1={y(line.y)} y2={y(line.y)} />
            <text x={right} y={y(line.y) - letters / 3} text-anchor="end">
              {line.words}
            </text>
          </>
        )}
        <path class="curve" d={`M${path}`} />
        {here && <circle class="here" cx={x(here.x)} cy={y(here.y)} r="5" />}
      </svg>
    </figure>
  );
}

function Axes({ places }: { places: CurvePlaces }) {
  const { left, right, bottom, height, letters, across, upward, decimals, x, y } = places;
  return (
    <>
      {upward.map((tick) => (
        <g>
          <line class="grid" x1={left} x2={right} y1={y(tick)} y2={y(tick)} />
          <text x={left - 0.4 * letters} y={y(tick) + letters / 3} text-anchor="end">
            {formatFixed(tick, decimals.y)}
          </text>
        </g>
      ))}
      {across.map((tick) => (
        <text x={x(tick)} y={height - letters / 3} text-anchor="middle">
          {formatFixed(tick, decimals.x)}
        </text>
      ))}
      <line class="axis" x1={left} x2={right} y1={bottom} y2={bottom} />
    </>
  );
}
