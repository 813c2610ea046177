import { free, keeps, lattice, type Bounds, type Shares } from '../../core/blend/region';

/** A place in a picture, CSS px. */
export interface Place {
  readonly x: number;
  readonly y: number;
}

/** A triangle of blends of three parts: the first at its top, the second at its left, the third at its right. */
export interface TrianglePlaces {
  readonly width: number;
  readonly height: number;
  readonly letters: number;
  readonly corners: readonly [Place, Place, Place];
  /** Where a blend lies; shares of the three parts, of which only the ratios count. */
  readonly at: (shares: readonly number[]) => Place;
}

/** A line of blends of two parts: the share of the second across, liking upwards from 1 to 9. */
export interface LinePlaces {
  readonly width: number;
  readonly height: number;
  readonly letters: number;
  readonly left: number;
  readonly right: number;
  readonly bottom: number;
  readonly at: (share: number, liking: number) => Place;
}

const LETTERS = 12; // CSS px at the usual size
const EDGE = 12; // room for a point that lies on an edge

/** A triangle in some room, px, with letters so much larger than usual; its names stand above and below it. */
export function trianglePlaces(room: number, scale: number): TrianglePlaces {
  const letters = LETTERS * scale;
  const side = room - 2 * EDGE;
  const top = 1.4 * letters + EDGE;
  const bottom = top + (side * Math.sqrt(3)) / 2;
  const corners = [
    { x: room / 2, y: top },
    { x: EDGE, y: bottom },
    { x: room - EDGE, y: bottom },
  ] as const;
  return {
    width: room,
    height: bottom + EDGE + 1.4 * letters,
    letters,
    corners,
    at: (shares) => {
      const all = corners.reduce((sum, _, i) => sum + shares[i]!, 0);
      const mean = (of: 'x' | 'y') => corners.reduce((sum, corner, i) => sum + (shares[i]! / all) * corner[of], 0);
      return all > 0 ? { x: mean('x'), y: mean('y') } : { x: room / 2, y: (top + 2 * bottom) / 3 };
    },
  };
}

/** A line of blends in some room, px, with letters so much larger than usual. */
export function linePlaces(room: number, scale: number): LinePlaces {
  const letters = LETTERS * scale;
  const [left, right, top, bottom] = [1.6 * letters, room - EDGE, EDGE, EDGE + 130 + 30 * scale];
  return {
    width: room,
    height: bottom + EDGE + 1.4 * letters,
    letters,
    left,
    right,
    bottom,
    at: (share, liking) => ({ x: left + share * (right - left), y: bottom - ((liking - 1) / 8) * (bottom - top) }),
  };
}

/** The nearest of some places to where a finger was, by its number; -1 where there is none. */
export function nearestPlace(to: Place, places: readonly Place[]): number {
  const apart = places.map(({ x, y }) => Math.hypot(x - to.x, y - to.y));
  return apart.indexOf(Math.min(...apart));
}

const SLICES = 4; // two by two on a phone

/** The shares of the fourth part (fractions) at which blends of four are drawn: from its least upwards, evenly within its bounds. */
export function slicesOf({ least, most }: Bounds[number]): number[] {
  return Array.from({ length: most > least ? SLICES : 1 }, (_, i) => least + (i / SLICES) * (most - least));
}

/** The blends of four (fractions) within the bounds that the slice at a share of the fourth draws, in so many steps along its side. */
export function sliceCells(fourth: number, bounds: Bounds, steps: number): Shares[] {
  const cells = lattice(free(3), steps).map((shares) => [...shares.map((share) => share * (1 - fourth)), fourth]);
  return cells.filter((shares) => keeps(shares, bounds));
}
