import { reachable } from '../../core/blend/region';
import { linePlaces, nearestPlace, type LinePlaces } from './blendPlaces';
import { Mark, place, touched, type BlendPicture } from './BlendMark';
import { letterScale, pageRoom } from './pictureRoom';

/** Blends of two: what is expected of them as a curve in its band, and the blends on it. */
export function BlendLine({ parts, bounds, surface, points, words, chosen, onChoose }: BlendPicture) {
  const places = linePlaces(pageRoom(), letterScale());
  const { at, width, height, letters, left, right, bottom } = places;
  const { least, most } = reachable(bounds)[1]!;
  const curve = Array.from({ length: 41 }, (_, i) => least + (i / 40) * (most - least)).map((share) => ({
    share,
    ...surface([1 - share, share]),
  }));
  const path = (of: (one: (typeof curve)[number]) => number, all = curve) =>
    all.map((one) => place(at(one.share, of(one)))).join('L');
  const band = `M${path((one) => one.value + one.uncertainty)}L${path((one) => one.value - one.uncertainty, curve.toReversed())}Z`; // prettier-ignore
  const marks = points.map(({ shares, liking }) => at(shares[1]!, liking ?? surface(shares).value));
  return (
    <svg
      viewBox={`0 0 ${width} ${height}`}
      font-size={letters}
      role="img"
      aria-label={words}
      onClick={(event) => onChoose(nearestPlace(touched(event, width), marks))}
    >
      <Grid places={places} />
      <path class="band" d={band} />
      <path class="curve" d={`M${path((one) => one.value)}`} />
      {marks.map((mark, i) => (
        <Mark at={mark} sort={points[i]!.sort} chosen={i === chosen} />
      ))}
      <text x={left} y={height - letters / 3}>
        {parts[0]}
      </text>
      <text x={right} y={height - letters / 3} text-anchor="end">
        {parts[1]}
      </text>
      <line class="axis" x1={left} x2={right} y1={bottom} y2={bottom} />
    </svg>
  );
}

function Grid({ places: { at, letters } }: { places: LinePlaces }) {
  return (
    <>
      {[1, 3, 5, 7, 9].map((liking) => {
        const [start, end] = [at(0, liking), at(1, liking)];
        return (
          <g>
            <line class="grid" x1={start.x} x2={end.x} y1={start.y} y2={end.y} />
            <text x={start.x - letters / 2} y={start.y + letters / 3} text-anchor="end">
              {liking}
            </text>
          </g>
        );
      })}
    </>
  );
}
