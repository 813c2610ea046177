import { formatPlain } from '../../ui/format';

/** Levels in mg/kg: now, liked before, the highest that passes, the former maximum, the target. */
export interface Levels {
  readonly now: number;
  readonly liked: { readonly low: number; readonly high: number } | null;
  readonly ceiling: { readonly mgPerKg: number; readonly of: string; readonly sure: boolean } | null;
  readonly former: { readonly mgPerKg: number; readonly source: string } | null;
  readonly target: number | null;
}

const ROOM = 1.25; // the axis ends a quarter beyond the last mark that matters
const FAR = 8; // a mark more than that many times beyond the others is said in words only

/** Where the dose stands: liked range shaded, ceiling as a wall, former maximum dashed, the dose as a needle. */
export function DoseBar({ levels }: { levels: Levels }) {
  const { now, liked, ceiling, former, target } = levels;
  const near = Math.max(now, liked?.high ?? 0, target ?? 0);
  const shown = [ceiling?.mgPerKg, former?.mgPerKg].filter((x) => x !== undefined && (near === 0 || x <= FAR * near));
  const end = ROOM * Math.max(near, ...(shown as number[]));
  const at = (mgPerKg: number) => Math.min(100, (100 * mgPerKg) / end);
  const words = captions(levels);
  if (!(end > 0) || words.length === 0) return null; // a needle alone says nothing
  return (
    <figure class="bar-of-dose">
      <svg
        viewBox="0 0 100 14"
        preserveAspectRatio="none"
        role="img"
        aria-label={[`${formatPlain(now, 3)} mg/kg now`, ...words].join('; ')}
      >
        <rect class="road" x="0" y="4" width="100" height="6" rx="1.5" />
        {liked && (
          <rect class="liked" x={at(liked.low)} y="4" width={Math.max(1, at(liked.high) - at(liked.low))} height="6" />
        )}
        {ceiling && ceiling.mgPerKg <= end && (
          <>
            <rect class="beyond" x={at(ceiling.mgPerKg)} y="4" width={100 - at(ceiling.mgPerKg)} height="6" />
            <rect class="wall" x={at(ceiling.mgPerKg) - 0.5} y="1" width="1" height="12" />
          </>
        )}
        {former && former.mgPerKg <= end && (
          <line class="former" x1={at(former.mgPerKg)} x2={at(former.mgPerKg)} y1="2" y2="12" />
        )}
        {target !== null && <rect class="wish" x={at(target) - 0.4} y="4" width="0.8" height="6" />}
        <rect class="needle" x={at(now) - 0.8} y="0" width="1.6" height="14" />
      </svg>
      <figcaption>{words.join(' · ')}</figcaption>
    </figure>
  );
}

function captions({ liked, ceiling, former, target }: Levels): string[] {
  const number = (mgPerKg: number) => formatPlain(mgPerKg, 3);
  return [
    liked && `liked ${number(liked.low)}${liked.low === liked.high ? '' : `–${number(liked.high)}`}`,
    target !== null && `wanted ${number(target)}`,
    ceiling && `ceiling ${number(ceiling.mgPerKg)} (${ceiling.of}${ceiling.sure ? '' : ', check the law'})`,
    former && `once allowed ${number(former.mgPerKg)}`,
  ].filter((part): part is string => Boolean(part));
}
