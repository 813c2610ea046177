import { StripPaper, tipLength } from '../../ui/drawn/Strip';
import { tipOf } from './tips';

/** A strip as the fan draws it. */
export interface DrawnStrip {
  readonly id: string;
  /** What is written on it: code and strength. */
  readonly code: string;
  /** 1 just dipped, 0 dry. */
  readonly wet: number;
  readonly ready: boolean;
  /** Colour family of its tip. */
  readonly family: string;
}

const WIDTH = 352;
const HEIGHT = 224;
const HOLD = { x: WIDTH / 2, y: HEIGHT - 6 }; // where the dry ends are held
const LENGTH = 178;
const FORWARD = 14; // a strip that is ready stands out by so much
const LEAST_WRITTEN = 56; // room along a strip for what is written on it, where many lie over one another

/** The strips fanned out from the hand, tips apart; ready ones stand forward, wet tips are dark and carry a drop. */
export function FanPicture({ strips }: { strips: readonly DrawnStrip[] }) {
  const few = strips.length <= 4;
  const width = few ? 30 : strips.length > 7 ? 20 : 26;
  const spread = Math.min(124, (few ? 36 : 27) * (strips.length - 1)); // degrees over all strips
  const step = strips.length < 2 ? 90 : spread / (strips.length - 1);
  const covered = width / (2 * Math.sin((step * Math.PI) / 360)); // so far from the hand a strip lies under the next
  const written = Math.max(LEAST_WRITTEN, LENGTH - tipLength(width) - 8 - covered);
  const angle = (i: number): number => (strips.length < 2 ? 0 : -spread / 2 + i * step);
  const ordered = strips.map((strip, i) => ({ strip, turn: angle(i) })).sort((a, b) => +a.strip.ready - +b.strip.ready);
  const told = strips.map(({ code, ready }) => `${code} ${ready ? 'ready' : 'drying'}`).join(', ');
  return (
    <svg class="fan" viewBox={`0 0 ${WIDTH} ${HEIGHT}`} role="img" aria-label={`Fan of strips: ${told}`}>
      {ordered.map(({ strip, turn }) => (
        <g key={strip.id} transform={`translate(${HOLD.x} ${HOLD.y}) rotate(${turn})`}>
          <StripPaper
            tag={strip.code}
            tip={tipOf(strip.family)}
            wet={strip.wet}
            pale={!strip.ready}
            length={LENGTH + (strip.ready ? FORWARD : 0)}
            width={width}
            written={written - 8}
          />
        </g>
      ))}
    </svg>
  );
}
