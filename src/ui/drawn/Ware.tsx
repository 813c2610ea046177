import { Drawing, penFor, round, type DrawnSize, type Pen } from './Drawing';
import { surfaceAt } from './measure';

interface WareProps {
  /** How full, 0 to 1. */
  level: number;
  size: DrawnSize;
  /** What it says where no words are beside it. */
  title?: string;
}

/** What an open vessel looks like, in units of its sheet. */
interface Shape {
  readonly width: number;
  readonly height: number;
  readonly outline: string;
  /** The inside: half its width at the floor and at the full mark, and the heights of both (y, downwards). */
  readonly inside: { middle: number; floor: number; full: number; atFloor: number; atFull: number; corner: number };
  /** At which levels it has a mark, if any. */
  readonly marks?: readonly number[];
}

/** A tumbler, for a drink. */
export function Glass(props: WareProps) {
  return <Ware {...props} sort="tumbler" shape={tumbler} />;
}

/** A measuring jug, for a batch. */
export function Jug(props: WareProps) {
  return <Ware {...props} sort="jug" shape={jug} />;
}

/** A conical flask, for a concentrate. */
export function Flask(props: WareProps) {
  return <Ware {...props} sort="flask" shape={flask} />;
}

const tumbler: Shape = {
  width: 120,
  height: 160,
  outline: 'M8 8L19 142a12 12 0 0 0 12 10H89a12 12 0 0 0 12-10L112 8',
  inside: { middle: 60, floor: 138, full: 24, atFloor: 37, atFull: 46.5, corner: 6 },
};

const jug: Shape = {
  width: 150,
  height: 160,
  outline:
    'M8 10H108V138a14 14 0 0 1-14 14H36a14 14 0 0 1-14-14V36ZM108 36H126a14 14 0 0 1 14 14V88a14 14 0 0 1-14 14H108',
  inside: { middle: 65, floor: 148, full: 34, atFloor: 39, atFull: 39, corner: 11 },
  marks: [0.25, 0.5, 0.75, 1],
};

const flask: Shape = {
  width: 130,
  height: 160,
  outline: 'M42 8H88M50 8V58L13 132a14 14 0 0 0 12 20H105a14 14 0 0 0 12-20L80 58V8',
  inside: { middle: 65, floor: 148, full: 68, atFloor: 49, atFull: 15, corner: 8 },
};

function Ware({ level, size, title, sort, shape }: WareProps & { sort: string; shape: Shape }) {
  const { width, height, outline, inside, marks = [] } = shape;
  const pen = penFor(size, height);
  return (
    <Drawing width={width} height={height} size={size} title={title} class={sort}>
      <path class="glass" d={outline} />
      <Filling level={level} inside={inside} pen={pen} />
      {!pen.tiny && <path class="marks" d={marksAt(marks, inside)} stroke-width={pen.line} />}
      <path class="edge" d={outline} stroke-width={pen.line} />
    </Drawing>
  );
}

function Filling({ level, inside, pen }: { level: number; inside: Shape['inside']; pen: Pen }) {
  const { middle, floor, full, atFloor, atFull, corner } = inside;
  const surface = surfaceAt(level, { bottom: floor, full, least: 2.5 * pen.line });
  if (surface === null) return null;
  const half = round(atFloor + ((atFull - atFloor) * (floor - surface)) / (floor - full));
  const y = round(surface);
  const c = round(Math.min(corner, (floor - surface) / 2));
  const [left, right, foot] = [round(middle - atFloor), round(middle + atFloor), round(atFloor - c)];
  const walls = `M${middle - half} ${y}L${left} ${floor - c}Q${left} ${floor} ${middle - foot} ${floor}H${middle + foot}Q${right} ${floor} ${right} ${floor - c}L${middle + half} ${y}Z`;
  return (
    <>
      <path class="liquid" d={walls} />
      <path class="surface" d={`M${middle - half} ${y}H${middle + half}`} stroke-width={pen.line} />
    </>
  );
}

function marksAt(levels: readonly number[], { middle, floor, full, atFull }: Shape['inside']): string {
  return levels.map((level) => `M${middle - atFull + 4} ${round(floor - level * (floor - full))}h14`).join('');
}
