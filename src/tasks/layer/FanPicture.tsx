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
const TIP = 34;
const LEAST_WRITTEN = 56; // room along a strip for what is written on it, where many lie over one another
const SIGN = 0.62; // width of a letter of the code over its size, taken wide

/** The strips fanned out from the hand, tips apart; ready ones stand forward, wet tips are dark and carry a drop. */
export function FanPicture({ strips }: { strips: readonly DrawnStrip[] }) {
  const width = strips.length > 7 ? 20 : 26;
  const spread = Math.min(124, 27 * (strips.length - 1)); // degrees over all strips
  const step = strips.length < 2 ? 90 : spread / (strips.length - 1);
  const covered = width / (2 * Math.sin((step * Math.PI) / 360)); // so far from the hand a strip lies under the next
  const written = Math.max(LEAST_WRITTEN, LENGTH - TIP - 8 - covered);
  const angle = (i: number): number => (strips.length < 2 ? 0 : -spread / 2 + i * step);
  const ordered = strips.map((strip, i) => ({ strip, turn: angle(i) })).sort((a, b) => +a.strip.ready - +b.strip.ready);
  const told = strips.map(({ code, ready }) => `${code} ${ready ? 'ready' : 'drying'}`).join(', ');
  return (
    <svg class="fan" viewBox={`0 0 ${WIDTH} ${HEIGHT}`} role="img" aria-label={`Fan of strips: ${told}`}>
      {ordered.map(({ strip, turn }) => (
        <g key={strip.id} transform={`translate(${HOLD.x} ${HOLD.y}) rotate(${turn})`}>
          <StripPicture strip={strip} width={width} written={written} />
        </g>
      ))}
    </svg>
  );
}

function StripPicture({ strip, width, written }: { strip: DrawnStrip; width: number; written: number }) {
  const { code, wet, ready, family } = strip;
  const top = -(LENGTH + (ready ? FORWARD : 0));
  const half = width / 2;
  const tip = `M${-half} ${top + TIP}V${top + half}a${half} ${half} 0 0 1 ${width} 0V${top + TIP}Z`;
  return (
    <>
      <path class="paper" d={`M${-half} 0V${top + half}a${half} ${half} 0 0 1 ${width} 0V0Z`} />
      <path class={`tip family-${family}`} d={tip} />
      <path class="wet" d={tip} opacity={wet * 0.35} />
      {wet > 0 && <path class="drop" d={`M0 ${top + 8}c4 6 6 8 6 11a6 6 0 0 1 -12 0c0-3 2-5 6-11Z`} />}
      <text
        transform={`translate(0 ${top + TIP + 8 + written / 2}) rotate(-90)`}
        font-size={Math.min(0.75 * width, written / (SIGN * code.length))}
        class={ready ? 'code' : 'code drying'}
      >
        {code}
      </text>
    </>
  );
}
