import type { Pen } from './Drawing';
import { round } from './Drawing';
import { fitLines, fitText, ringsOf } from './measure';

/** What is written on a label, and the share of neat material (g/g or g/mL) that its rings count; without one there are none. */
export interface Tag {
  readonly code: string;
  readonly strength: string;
  readonly share?: number | undefined;
}

/** A box, in units of the drawing. */
export interface Box {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

const STRIPE = 8;

/** The label: a stripe in the tone of the material, code and strength where they can be read, and a ring for each tenfold step. */
export function Label({ tag, box, hue, pen }: { tag: Tag; box: Box; hue: string | undefined; pen: Pen }) {
  const { left, top, width, height } = box;
  const stripe = hue === undefined ? 0 : STRIPE;
  const rings = ringsAt(ringsOf(tag.share), box, pen);
  const pad = pen.pxPerUnit < 0.6 ? 3 : 6; // a small label uses its paper to the edge
  const room = { width: width - stripe - 2 * pad, height: height - 2 * pad - rings.height, pxPerUnit: pen.pxPerUnit };
  const lines = fitLines(tag, room);
  const x = round(left + stripe + (width - stripe) / 2);
  return (
    <>
      <rect class="label" x={left} y={top} width={width} height={height} />
      {hue !== undefined && <rect x={left} y={top} width={stripe} height={height} fill={hue} class="hue" />}
      <Lines lines={lines} x={x} top={top + pad} height={room.height} />
      <path
        class="rings"
        d={ringPath(lines.length > 0 ? rings : centred(rings, box), left + stripe, left + width)}
        stroke-width={rings.line}
      />
      <rect class="edge" x={left} y={top} width={width} height={height} stroke-width={pen.fine} />
    </>
  );
}

function Lines({
  lines,
  x,
  top,
  height,
}: {
  lines: ReturnType<typeof fitLines>;
  x: number;
  top: number;
  height: number;
}) {
  const free = height - lines.reduce((sum, { size }) => sum + size, 0);
  let y = top;
  return (
    <>
      {lines.map(({ text, size }) => {
        y += free / (lines.length + 1) + size;
        return (
          <text x={x} y={round(y - 0.14 * size)} font-size={round(size)}>
            {text}
          </text>
        );
      })}
    </>
  );
}

interface Rings {
  readonly count: number;
  readonly line: number;
  readonly pitch: number;
  /** Room that they take at the foot of the label. */
  readonly height: number;
  readonly first: number;
}

/** Rings at the foot of the label: far enough apart at any size to be counted. */
function ringsAt(count: number, { top, height }: Box, { pxPerUnit }: Pen): Rings {
  const line = round(Math.min(8, Math.max(2.5, 1.75 / pxPerUnit)));
  const pitch = round(Math.min(15, Math.max(6, 3.6 / pxPerUnit)));
  return { count, line, pitch, height: count * pitch, first: top + height - (count - 0.25) * pitch };
}

/** A label without letters has its rings in the middle. */
function centred(rings: Rings, { top, height }: Box): Rings {
  return { ...rings, first: top + (height - (rings.count - 1) * rings.pitch) / 2 };
}

function ringPath({ count, pitch, first }: Rings, from: number, to: number): string {
  return Array.from({ length: count }, (_, i) => `M${from} ${round(first + i * pitch)}H${to}`).join('');
}

const SMELL_ONLY = 'SMELL ONLY';

/** The band of what may only be smelled: all around and over the edge of the glass, with its words where they can be read. */
export function SmellBand({ below, width, pen }: { below: Box; width: number; pen: Pen }) {
  const height = round(Math.min(24, Math.max(15, 4 / pen.pxPerUnit)));
  const middle = below.top + below.height + 16;
  const y = round(middle - height / 2);
  const size = fitText(SMELL_ONLY, width - 10, 0.78 * height, pen.pxPerUnit);
  return (
    <g class="smell-band">
      <rect x={2} y={y} width={width - 4} height={height} rx={2} />
      {size > 0 && (
        <text x={width / 2} y={round(middle + 0.35 * size)} font-size={round(size)}>
          {SMELL_ONLY}
        </text>
      )}
    </g>
  );
}
