import { StripPaper, tipLength } from '../../ui/drawn/Strip';
import { tipOf } from './tips';

/** A strip as the fan draws it. */
export interface DrawnStrip {
  readonly id: string;
  /** What is written on it: code and strength. */
  readonly code: string;
  /** 1 just dipped, 0 dry. */
  readonly wet: number;
  /** The same in words, above its tip: a line, or two. */
  readonly state: readonly string[];
  /** Colour family of its tip. */
  readonly family: string;
  /** Whether it is under the nose now. */
  readonly inHand: boolean;
}

const LENGTH = 196; // from where the dry ends are held
const FORWARD = 12; // a strip that is smelled stands out by so much
const MOST_HIDDEN = 48; // of the dry ends, which lie over one another in the hand
const ROOM = 22; // beside the middle of a tip
const LINE = 18; // of the words above a tip
const LEAST_WRITTEN = 56; // room along a strip for what is written on it, where many lie over one another

interface Props {
  strips: readonly DrawnStrip[];
  onStrip: (id: string) => void;
}

/** How strips are laid out: lengths in units of the picture, angles in degrees from upright. */
function layOut(strips: readonly DrawnStrip[]) {
  const count = strips.length;
  const width = count > 7 ? 20 : 32;
  const spread = Math.min(128, (count <= 4 ? 36 : 28) * (count - 1)); // over all strips
  const step = count < 2 ? 90 : spread / (count - 1);
  const covered = width / (2 * Math.sin((step * Math.PI) / 360)); // so far from the hand a strip lies under the next
  const written = Math.max(LEAST_WRITTEN, LENGTH - tipLength(width) - 8 - covered);
  const angle = (i: number): number => (count < 2 ? 0 : -spread / 2 + i * step);
  const lean = (spread * Math.PI) / 360; // of the outermost strip
  const bottom = Math.max(0, Math.min(MOST_HIDDEN, covered * Math.cos(lean) - width / 2)); // below all that is written
  const far = stateAt(strips[0]?.state ?? [], true, angle(0));
  const half = Math.max(170, far * Math.sin(lean) + ROOM + 4);
  const top = LENGTH + FORWARD + 8 + 2 * LINE;
  return { width, step, written, angle, viewBox: `${-half} ${-top} ${2 * half} ${top - bottom}` };
}

/** The strips fanned out from the hand, tips apart; those that are smelled stand forward, wet tips are dark and carry a drop. A touch opens one. */
export function FanPicture({ strips, onStrip }: Props) {
  const { width, step, written, angle, viewBox } = layOut(strips);
  const told = strips.map(({ code, state }) => `${code} ${state.join(' ')}`).join(', ');
  return (
    <svg class="fan" viewBox={viewBox} role="img" aria-label={`Fan of strips: ${told}`}>
      {strips.map((strip, i) => (
        <g
          key={strip.id}
          class={strip.inHand ? 'strip' : 'strip aside'}
          transform={`rotate(${angle(i)})`}
          onClick={() => onStrip(strip.id)}
        >
          <path class="reach" d={reach(Math.min(step, 30))} />
          <StripPaper
            tag={strip.code}
            tip={tipOf(strip.family)}
            wet={strip.wet}
            length={LENGTH + (strip.inHand ? FORWARD : 0)}
            width={width}
            written={written - 8}
            flipped={angle(i) < 0}
          />
          <State strip={strip} turn={angle(i)} />
        </g>
      ))}
    </svg>
  );
}

/** What a finger meets of a strip: its sector of the fan, from half of its length on. */
function reach(step: number): string {
  const far = LENGTH + FORWARD + 2 * LINE;
  const at = (r: number, side: number): string => {
    const turn = (side * step * Math.PI) / 360;
    return `${(r * Math.sin(turn)).toFixed(1)} ${(-r * Math.cos(turn)).toFixed(1)}`;
  };
  return `M${at(LENGTH / 2, -1)}L${at(far, -1)}L${at(far, 1)}L${at(LENGTH / 2, 1)}Z`;
}

/** How far from the hand the middle of the words above a tip is, so that they do not touch it. */
function stateAt(state: readonly string[], inHand: boolean, turn: number): number {
  const [aside, up] = [Math.abs(Math.sin((turn * Math.PI) / 180)), Math.cos((turn * Math.PI) / 180)];
  return LENGTH + (inHand ? FORWARD : 0) + 4 + aside * ROOM + (up * state.length * LINE) / 2;
}

/** Wet or dry in words, upright above the tip. */
function State({ strip: { state, inHand }, turn }: { strip: DrawnStrip; turn: number }) {
  return (
    <g transform={`translate(0 ${-stateAt(state, inHand, turn)}) rotate(${-turn})`}>
      {state.map((line, i) => (
        <text class="state" y={(i - (state.length - 1) / 2) * LINE} font-size={LINE - 2}>
          {line}
        </text>
      ))}
    </g>
  );
}
