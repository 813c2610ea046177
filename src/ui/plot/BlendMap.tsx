import { useSignal } from '@preact/signals';
import { lattice, reachable, type Bounds, type Shares } from '../../core/blend/region';
import { formatFixed, formatShare } from '../format';
import { BlendLine } from './BlendLine';
import { Mark, place, touched, type BlendFacts, type BlendPicture, type BlendPoint } from './BlendMark';
import { nearestPlace, sliceCells, slicesOf, trianglePlaces, type TrianglePlaces } from './blendPlaces';
import { letterScale, pageRoom } from './pictureRoom';
import './blendMap.css';

const CELLS = 12; // steps of a share between the cells of a triangle
const SLICE_CELLS = 8; // and of a slice
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
      <Legend line={parts.length === 2} sorts={new Set(points.map(({ sort }) => sort))} />
    </figure>
  );
}

const SIGNS = { tried: 'judged', best: 'expected best', next: 'next' } as const;

/** What the signs in the picture mean, each with its sign. */
function Legend({ line, sorts }: { line: boolean; sorts: ReadonlySet<BlendPoint['sort']> }) {
  const shown = (['tried', 'best', 'next'] as const).filter((sort) => sorts.has(sort));
  return (
    <figcaption class="legend">
      {shown.map((sort) => (
        <span>
          <Sign sort={sort} /> {SIGNS[sort]}
        </span>
      ))}
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
  const cells = expectedAt(lattice(props.bounds, CELLS), props);
  return (
    <Face {...props} places={places} names={props.parts} cells={cells} steps={CELLS} range={rangeOf(cells)} shown={() => true} />
  ); // prettier-ignore
}

/** Triangles of the first three parts, at several shares of the fourth; a blend is drawn in the slice that is nearest to it. */
function Slices(props: BlendPicture) {
  const { parts, bounds, points } = props;
  const room = pageRoom();
  const places = trianglePlaces(room < 480 ? (room - 12) / 2 : (room - 36) / 4, letterScale());
  const slices = slicesOf(reachable(bounds)[3]!);
  const nearest = (shares: Shares) => slices.reduce((near, one) => (Math.abs(one - shares[3]!) < Math.abs(near - shares[3]!) ? one : near)); // prettier-ignore
  const faces = facesOf(slices, bounds, props);
  const range = rangeOf(faces.flatMap(({ cells }) => cells));
  return (
    <div class="slices">
      {faces.map(({ share, cells }) => {
        const shown = (shares: Shares) => nearest(shares) === share;
        const here = points.filter(({ shares }) => shown(shares)).map(({ words }) => words);
        const words = [`${formatShare(share, 2)} ${parts[3]}: ${spanWords(cells)}`, ...here].join('; ');
        return (
          <div>
            <Face {...{ ...props, words, places, cells, steps: SLICE_CELLS, range, shown, names: ['A', 'B', 'C'] }} />
            <p class="quiet">
              {formatShare(share, 2)} {parts[3]}
            </p>
          </div>
        );
      })}
      <p class="quiet">{`A ${parts[0]}, B ${parts[1]}, C ${parts[2]}`}</p>
    </div>
  );
}

/** The slices with what is expected in them. One that the bounds leave nothing of is left out. */
function facesOf(slices: readonly number[], bounds: Bounds, props: BlendPicture) {
  return slices.flatMap((share) => {
    const cells = sliceCells(share, bounds, SLICE_CELLS);
    return cells.length === 0 ? [] : [{ share, cells: expectedAt(cells, props) }];
  });
}

/** A blend of the surface, and what is expected of it. */
type Cell = ReturnType<BlendPicture['surface']> & { readonly shares: Shares };

function expectedAt(cells: readonly Shares[], { surface }: BlendPicture): Cell[] {
  return cells.map((shares) => ({ shares, ...surface(shares) }));
}

/** The lowest and the highest value: what the tones of all faces are measured by. */
function rangeOf(cells: readonly Cell[]): readonly [number, number] {
  const values = cells.map(({ value }) => value);
  return [Math.min(...values), Math.max(...values)];
}

function spanWords(cells: readonly Cell[]): string {
  const [low, high] = rangeOf(cells).map((value) => formatFixed(value, 1));
  return low === high ? `expected ${low} everywhere` : `expected from ${low} to ${high}`;
}

interface FaceProps extends BlendPicture {
  places: TrianglePlaces;
  names: readonly string[];
  cells: readonly Cell[];
  /** Steps of a share between the cells. */
  steps: number;
  range: readonly [number, number];
  /** Whether a blend is drawn here. */
  shown: (shares: Shares) => boolean;
}

/** One triangle: cells as dark as they are expected to be liked and as large as that is sure, and the blends on them. */
function Face({ places, names, cells, steps, range, shown, points, words, chosen, onChoose }: FaceProps) {
  const { at, width, height, letters, corners } = places;
  const [top, left, right] = corners;
  const [low, high] = range;
  const tone = (value: number) => Math.min(TONES - 1, Math.floor(((value - low) / Math.max(high - low, 0.5)) * TONES));
  const size = (right.x - left.x) / (2 * (steps + 1));
  const marks = points.flatMap(({ shares, sort }, i) => (shown(shares) ? [{ i, sort, place: at(shares) }] : []));
  const choose = (event: MouseEvent) => {
    const near = nearestPlace(touched(event, width), marks.map((mark) => mark.place)); // prettier-ignore
    if (near >= 0) onChoose(marks[near]!.i);
  };
  return (
    <svg viewBox={`0 0 ${width} ${height}`} font-size={letters} role="img" aria-label={words} onClick={choose}>
      <path class="outline" d={`M${corners.map(place).join('L')}Z`} />
      {cells.map(({ shares, value, uncertainty }) => {
        const { x, y } = at(shares);
        return <circle class={`cell tone-${tone(value)}`} cx={x} cy={y} r={size * sureness(uncertainty)} />;
      })}
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
