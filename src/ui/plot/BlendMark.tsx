import type { Bounds, Shares } from '../../core/blend/region';
import type { Place } from './blendPlaces';

/** A blend in the picture, and what is said of it when it is touched. */
export interface BlendPoint {
  readonly shares: Shares;
  readonly sort: 'tried' | 'best' | 'next';
  /** How it was liked, 1 to 9, where it was tried. */
  readonly liking: number | null;
  readonly words: string;
}

/** What a picture of blends is drawn from. */
export interface BlendFacts {
  /** What the parts are called: two, three or four. */
  parts: readonly string[];
  bounds: Bounds;
  /** What is expected of a blend, points of 1 to 9, with its standard uncertainty. */
  surface: (shares: Shares) => { readonly value: number; readonly uncertainty: number };
  points: readonly BlendPoint[];
  /** The whole picture in words, for those who cannot see it. */
  words: string;
}

/** A picture of blends, of which one is chosen by a touch. */
export interface BlendPicture extends BlendFacts {
  chosen: number;
  onChoose: (point: number) => void;
}

/** A ring for what was tried, a full dot in a ring for the best, a cross for the next. */
export function Mark({ at: { x, y }, sort, chosen }: { at: Place; sort: BlendPoint['sort']; chosen?: boolean }) {
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
export function touched(event: MouseEvent, width: number): Place {
  const box = (event.currentTarget as Element).getBoundingClientRect();
  const scale = width / box.width;
  return { x: (event.clientX - box.left) * scale, y: (event.clientY - box.top) * scale };
}

/** A place as a path has it. */
export function place({ x, y }: Place): string {
  return `${x.toFixed(1)} ${y.toFixed(1)}`;
}
