import { Drawing, penFor, type DrawnSize } from './Drawing';
import { tipSigns, type TipSign } from './tipSigns';

/** The coloured tip of a strip: CSS colour, and the sign that says the same without it. */
export interface Tip {
  readonly hue: string;
  readonly sign: TipSign;
}

/** A smelling strip, in units of the picture that it lies in. */
export interface StripShape {
  /** Code and strength, written along it. */
  readonly tag: string;
  /** null where it has no colour yet. */
  readonly tip: Tip | null;
  /** 1 just dipped, 0 dry. */
  readonly wet: number;
  readonly length: number;
  readonly width: number;
  /** Written towards the hand, where letters would be upside down else: on the left side of a fan. */
  readonly flipped?: boolean;
  /** Room along it for what is written; all below the tip where it is not said. */
  readonly written?: number;
}

const TIP = 1.3; // length of the tip over the width of the strip
const LETTER = 0.62; // width of a letter over its size, taken wide
const GAP = 8;

/** Length of the tip of a strip so wide. */
export function tipLength(width: number): number {
  return TIP * width;
}

/** A strip that is held at 0, 0 and points upwards; a wet one has a dark tip with a drop on it. */
export function StripPaper({ tag, tip, wet, flipped, length, width, written }: StripShape) {
  const half = width / 2;
  const end = -length + tipLength(width);
  const paper = (foot: number) => `M${-half} ${foot}V${-length + half}a${half} ${half} 0 0 1 ${width} 0V${foot}Z`;
  const room = written ?? length - tipLength(width) - 3 * GAP;
  const tipPath = paper(end);
  return (
    <>
      <path class="paper" d={paper(0)} />
      <path class="tip" d={tipPath} style={tip ? { fill: tip.hue } : undefined} />
      {wet > 0 && <path class="wet" d={tipPath} opacity={0.35 * wet} />}
      {tip && <SignOf tip={tip} y={-length + half + 1} r={0.34 * width} />}
      {wet > 0 && <path class="drop" transform={`translate(0 ${end - 1}) scale(${width / 26})`} d={DROP} />}
      <text
        transform={`translate(0 ${end + 2 * GAP + room / 2}) rotate(${flipped ? 90 : -90})`}
        font-size={Math.min(0.72 * width, room / (LETTER * Math.max(1, [...tag].length)))}
        class="code"
      >
        {tag}
      </text>
    </>
  );
}

const DROP = 'M0-9c3.6 5.4 5.5 7.5 5.5 10.5a5.5 5.5 0 0 1-11 0C-5.5-1.5-3.6-3.6 0-9Z';

function SignOf({ tip, y, r }: { tip: Tip; y: number; r: number }) {
  return (
    <g transform={`translate(0 ${y})`}>
      <circle class="sign-ground" r={r} />
      <path class="sign" transform={`scale(${r / 10})`} d={tipSigns[tip.sign]} />
    </g>
  );
}

interface StripProps extends Omit<StripShape, 'length' | 'width' | 'written' | 'flipped'> {
  size: DrawnSize;
  title?: string;
}

/** One strip by itself, standing. */
export function Strip({ size, title, ...strip }: StripProps) {
  const pen = penFor(size, 200);
  return (
    <Drawing width={44} height={200} size={size} title={title} class="strip">
      <g transform="translate(22 196)" stroke-width={pen.fine}>
        <StripPaper {...strip} tag={pen.tiny ? '' : strip.tag} length={190} width={36} />
      </g>
    </Drawing>
  );
}

/** The tip alone, seen from above: to choose a colour and sign by. */
export function TipDot({ tip, size }: { tip: Tip; size: number }) {
  return (
    <Drawing width={28} height={28} size={size} title={undefined} class="tip-dot">
      <circle class="tip" cx={14} cy={14} r={13} style={{ fill: tip.hue }} />
      <g transform="translate(14 14)">
        <SignOf tip={tip} y={0} r={8.5} />
      </g>
    </Drawing>
  );
}
