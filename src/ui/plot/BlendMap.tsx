import { useSignal } from '@preact/signals';
import { lattice, type Shares } from '../../core/blend/region';
import { formatShare } from '../format';
import { BlendLine } from './BlendLine';
import { Mark, place, touched, type BlendFacts, type BlendPicture, type BlendPoint } from './BlendMark';
import { nearestPlace, trianglePlaces, type TrianglePlaces } from './blendPlaces';
import { letterScale, pageRoom } from './pictureRoom';
import './blendMap.css';

const CELLS = 12; // steps of a share between the cells of a triangle
const SLICES = [0, 0.25, 0.5]; // shares of the fourth part
const TONES = 5;
const SURE = 0.3; // points of uncertainty at which a cell has its full size
const UNSURE = 1.8; // and at which it is a dot

/** Where it is expected to be best: a line for two parts, a triangle for three, slices for four. A touch tells of the nearest blend. */
export function BlendMap({ parts, bounds, surface, points, words }: BlendFacts) {
  const chosen = useSignal(points.findLastIndex(({ sort }) => sort !== 'tried'));
  const choose = (i: number) => (chosen.value = i);
  const common = { parts, bounds, surface, points, words, chosen: chosen.value, onChoose: choose };
  return (
    <figure class="blend-map">
      {parts.length === 2 ? (
        <BlendLine {...common} />
      ) : parts.length === 3 ? (
        <Triangle {...common} />
      ) : (
        <Slices {...common} />
      )}
      <p class="told" role="status">
        {points[chosen.value]?.words}
      </p>
      <Legend line={parts.length === 2} />
    </figure>
  );
}

/** What the signs mean, each with its sign. */
function Legend({ line }: { line: boolean }) {
  return (
    <figcaption class="legend">
      <Sign sort="tried" /> judged <Sign sort="best" /> expected best <Sign sort="next" /> next
      <span class="quiet">{line ? 'Band: its uncertainty.' : 'Darker: liked more. Smaller: less sure.'}</span>
    </figcaption>
  );
}

function Sign({ sort }: Pick<BlendPoint, 'sort'>) {
  return (
    <svg class="sign" viewBox="-10 -10 20 20" aria-hidden="true">
      <Mark at={{ x: 0, y: 0 }} sort={sort} />
    </svg>
  );
}

function Triangle(props: BlendPicture) {
  const places = trianglePlaces(Math.min(pageRoom(), 420 * letterScale()), letterScale());
  return (
    <Face {...props} places={places} names={props.parts} cells={lattice(props.bounds, CELLS)} shown={() => true} />
  );
}

/** Triangles of the first three parts, at several shares of the fourth; a blend is drawn in the slice that is nearest to it. */
function Slices(props: BlendPicture) {
  const { parts, bounds } = props;
  const room = pageRoom();
  const places = trianglePlaces(room < 480 ? (room - 12) / 2 : (room - 24) / 3, letterScale());
  const sliceOf = (shares: Shares) => SLICES.reduce((near, one) => (Math.abs(one - shares[3]!) < Math.abs(near - shares[3]!) ? one : near)); // prettier-ignore
  return (
    <div class="slices">
      {SLICES.filter((share) => share <= bounds[3]!.most && share >= bounds[3]!.least).map((share) => (
        <div>
          <Face
            {...props}
            words={`${formatShare(share)} ${parts[3]}. ${props.words}`}
            places={places}
            names={['A', 'B', 'C']}
            cells={lattice(bounds, 8).filter((shares) => shares[3] === share)}
            shown={(shares) => sliceOf(shares) === share}
          />
          <p class="quiet">
            {formatShare(share)} {parts[3]}
          </p>
        </div>
      ))}
      <p class="quiet">{`A ${parts[0]}, B ${parts[1]}, C ${parts[2]}`}</p>
    </div>
  );
}

interface FaceProps extends BlendPicture {
  places: TrianglePlaces;
  names: readonly string[];
  cells: readonly Shares[];
  /** Whether a blend is drawn here. */
  shown: (shares: Shares) => boolean;
}

/** One triangle: cells as dark as they are expected to be liked and as large as that is sure, and the blends on them. */
function Face({ places, names, cells, shown, surface, points, words, chosen, onChoose }: FaceProps) {
  const { at, width, height, letters, corners } = places;
  const [top, left, right] = corners;
  const values = cells.map((shares) => ({ place: at(shares), ...surface(shares) }));
  const [low, high] = [Math.min(...values.map(({ value }) => value)), Math.max(...values.map(({ value }) => value))];
  const tone = (value: number) => Math.min(TONES - 1, Math.floor(((value - low) / Math.max(high - low, 0.5)) * TONES));
  const size = (right.x - left.x) / (2 * Math.round(Math.sqrt(2 * Math.max(cells.length, 10))));
  const marks = points.flatMap(({ shares, sort }, i) => (shown(shares) ? [{ i, sort, place: at(shares) }] : []));
  const choose = (event: MouseEvent) => {
    const near = nearestPlace(touched(event, width), marks.map((mark) => mark.place)); // prettier-ignore
    if (near >= 0) onChoose(marks[near]!.i);
  };
  return (
    <svg viewBox={`0 0 ${width} ${height}`} font-size={letters} role="img" aria-label={words} onClick={choose}>
      <path class="outline" d={`M${corners.map(place).join('L')}Z`} />
      {values.map(({ place: { x, y }, value, uncertainty }) => (
        <circle class={`cell tone-${tone(value)}`} cx={x} cy={y} r={size * sureness(uncertainty)} />
      ))}
      {marks.map(({ i, sort, place }) => (
        <Mark at={place} sort={sort} chosen={i === chosen} />
      ))}
      <text x={top.x} y={letters} text-anchor="middle">
        {names[0]}
      </text>
      <text x={0} y={height - letters / 3}>
        {names[1]}
      </text>
      <text x={width} y={height - letters / 3} text-anchor="end">
        {names[2]}
      </text>
    </svg>
  );
}

/** Size of a cell, of its full one: smaller where less is known. */
function sureness(uncertainty: number): number {
  const share = (uncertainty - SURE) / (UNSURE - SURE);
  return 1 - 0.7 * Math.min(1, Math.max(0, share));
}
