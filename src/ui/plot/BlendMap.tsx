import { useSignal } from '@preact/signals';
import { lattice, type Bounds, type Shares } from '../../core/blend/region';
import { formatFixed, formatShare } from '../format';
import {
  linePlaces,
  nearestPlace,
  trianglePlaces,
  type LinePlaces,
  type Place,
  type TrianglePlaces,
} from './blendPlaces';
import { letterScale, pageRoom } from './pictureRoom';
import './blendMap.css';

/** A blend in the picture, and what is said of it when it is touched. */
export interface BlendPoint {
  readonly shares: Shares;
  readonly sort: 'tried' | 'best' | 'next';
  /** How it was liked, 1 to 9, where it was tried. */
  readonly liking: number | null;
  readonly words: string;
}

interface Props {
  /** What the parts are called: two, three or four. */
  parts: readonly string[];
  bounds: Bounds;
  /** What is expected of a blend, points of 1 to 9, with its standard uncertainty. */
  surface: (shares: Shares) => { readonly value: number; readonly uncertainty: number };
  points: readonly BlendPoint[];
  /** The whole picture in words, for those who cannot see it. */
  words: string;
}

const CELLS = 12; // steps of a share between the cells of a triangle
const SLICES = [0, 0.25, 0.5]; // shares of the fourth part
const TONES = 5;
const SURE = 0.3; // points of uncertainty at which a cell has its full size
const UNSURE = 1.8; // and at which it is a dot

/** Where it is expected to be best: a line for two parts, a triangle for three, slices for four. A touch tells of the nearest blend. */
export function BlendMap({ parts, bounds, surface, points, words }: Props) {
  const chosen = useSignal(points.findLastIndex(({ sort }) => sort !== 'tried'));
  const choose = (i: number) => (chosen.value = i);
  const common = { parts, bounds, surface, points, words, chosen: chosen.value, onChoose: choose };
  return (
    <figure class="blend-map">
      {parts.length === 2 ? (
        <Line {...common} />
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

interface PictureProps extends Props {
  chosen: number;
  onChoose: (point: number) => void;
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

/** A ring for what was tried, a full dot in a ring for the best, a cross for the next. */
function Mark({ at: { x, y }, sort, chosen }: { at: Place; sort: BlendPoint['sort']; chosen?: boolean }) {
  return (
    <g class={`mark ${sort}`} transform={`translate(${x} ${y})`}>
      {chosen && <circle class="chosen" r="12" />}
      {sort === 'tried' && <circle r="5" />}
      {sort === 'best' && (
        <>
          <circle r="8" />
          <circle class="core" r="3.5" />
        </>
      )}
      {sort === 'next' && <path d="M-6 0H6M0 -6V6" />}
    </g>
  );
}

/** The touch in the units of the picture. */
function touched(event: MouseEvent, width: number): Place {
  const box = (event.currentTarget as Element).getBoundingClientRect();
  const scale = width / box.width;
  return { x: (event.clientX - box.left) * scale, y: (event.clientY - box.top) * scale };
}

function Line({ parts, bounds, surface, points, words, chosen, onChoose }: PictureProps) {
  const places = linePlaces(pageRoom(), letterScale());
  const { at, width, height, letters, left, right, bottom } = places;
  const [least, most] = [bounds[1]!.least, bounds[1]!.most];
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

function place({ x, y }: Place): string {
  return `${x.toFixed(1)} ${y.toFixed(1)}`;
}

function Triangle(props: PictureProps) {
  const places = trianglePlaces(Math.min(pageRoom(), 420 * letterScale()), letterScale());
  return (
    <Face {...props} places={places} names={props.parts} cells={lattice(props.bounds, CELLS)} shown={() => true} />
  );
}

/** Triangles of the first three parts, at several shares of the fourth; a blend is drawn in the slice that is nearest to it. */
function Slices(props: PictureProps) {
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

interface FaceProps extends PictureProps {
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

/** '7.2 ± 0.6': a liking with its standard uncertainty doubled. */
export function likingText({ value, uncertainty }: { value: number; uncertainty: number }): string {
  return `${formatFixed(value, 1)} ± ${formatFixed(2 * uncertainty, 1)}`;
}
