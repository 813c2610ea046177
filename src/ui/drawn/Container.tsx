import type { ComponentChildren } from 'preact';
import { Drawing, penFor, round, type DrawnSize, type Pen } from './Drawing';
import { Label, SmellBand, type Box, type Tag } from './VialLabel';
import { surfaceAt } from './measure';
import { StateMark, type MakingState } from './StateMark';

/** What is seen of a vial or bottle. */
export interface ContainerProps {
  /** How full, 0 to 1; null where no one knows. Beyond 1 it is full. */
  level: number | null;
  /** What is written on its label; null for one without a label. */
  tag: Tag | null;
  smellOnly?: boolean;
  /** CSS colour of its material: a stripe along the label. */
  hue?: string | undefined;
  /** In a rack: made, the one that is made now, or one to come. */
  state?: MakingState;
  size: DrawnSize;
  /** What it says where no words are beside it. */
  title?: string;
}

/** The parts that make one of glass: paths and boxes in a sheet of 112 × 200. */
export interface Pieces {
  readonly glass: string;
  readonly liquid: { left: number; right: number; bottom: number; full: number; corner: number };
  readonly cap: ComponentChildren;
  readonly ridges: string;
  readonly pipette?: string;
  readonly label: Box;
}

const WIDTH = 112;
const HEIGHT = 200;

/** A vial or bottle of those pieces, in all sizes from a row of a list to the whole pad. */
export function Container(props: ContainerProps & { sort: string; pieces: Pieces }) {
  const { sort, pieces, level, tag, smellOnly, hue, state, size, title } = props;
  const pen = penFor(size, HEIGHT);
  return (
    <Drawing width={WIDTH} height={HEIGHT} size={size} title={title} class={state ? `${sort} ${state}` : sort}>
      <path class={level === null ? 'glass unknown' : 'glass'} d={pieces.glass} />
      {level !== null && <Liquid level={level} within={pieces.liquid} pen={pen} />}
      {pieces.pipette && <path class="pipette" d={pieces.pipette} stroke-width={pen.fine} />}
      {!pen.tiny && <Marks within={pieces.liquid} pen={pen} />}
      <path class="edge" d={pieces.glass} stroke-width={pen.line} />
      <g class="cap" stroke-width={pen.line}>
        {pieces.cap}
        {!pen.tiny && <path class="ridges" d={pieces.ridges} stroke-width={pen.fine} />}
      </g>
      {tag && <Label tag={tag} box={pieces.label} hue={hue} pen={pen} />}
      {smellOnly && <SmellBand below={pieces.label} width={WIDTH} pen={pen} />}
      {state && <StateMark state={state} pen={pen} />}
    </Drawing>
  );
}

const WALL = 3; // glass between the edge and what is in it

function Liquid({ level, within, pen }: { level: number; within: Pieces['liquid']; pen: Pen }) {
  const { left, right, bottom, full, corner } = within;
  const floor = bottom - WALL;
  const surface = surfaceAt(level, { bottom: floor, full, least: 2.5 * pen.line });
  if (surface === null) return null;
  const [y, x0, x1] = [round(surface), left + WALL, right - WALL];
  const r = round(Math.min(corner - WALL, floor - surface));
  return (
    <>
      <path
        class="liquid"
        d={`M${x0} ${y}V${round(floor - r)}a${r} ${r} 0 0 0 ${r} ${r}H${x1 - r}a${r} ${r} 0 0 0 ${r} -${r}V${y}Z`}
      />
      <path class="surface" d={`M${x0} ${y}H${x1}`} stroke-width={pen.line} />
    </>
  );
}

/** Marks at the quarters, on the strip of glass beside the label. */
function Marks({ within: { right, bottom, full }, pen }: { within: Pieces['liquid']; pen: Pen }) {
  const at = [0.25, 0.5, 0.75, 1].map((share) => round(bottom - WALL - share * (bottom - WALL - full)));
  return <path class="marks" d={at.map((y) => `M${right - 8} ${y}H${right - 1}`).join('')} stroke-width={pen.fine} />;
}
