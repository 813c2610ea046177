import { formatPlain } from '../../ui/format';

/** Levels in mg/kg: now, liked before, the first limit, the former maximum, the target. */
export interface Levels {
  readonly now: number;
  readonly liked: { readonly low: number; readonly high: number } | null;
  readonly limit: { readonly mgPerKg: number; readonly of: string; readonly sure: boolean } | null;
  readonly former: { readonly mgPerKg: number; readonly source: string } | null;
  readonly target: number | null;
}

const ROOM = 1.25; // the axis ends a quarter beyond the last mark that matters
const FAR = 8; // a mark more than that many times beyond the others is not told: no one doses so; our choice

/** Where the dose is: filled up to now, the liked range marked, the target as a tick, the first limit as a wall. */
export function DoseBar({ levels }: { levels: Levels }) {
  const { now, liked, target } = levels;
  const near = Math.max(now, liked?.high ?? 0, target ?? 0);
  const isNear = (level: number | undefined) => level !== undefined && (near === 0 || level <= FAR * near);
  const limit = isNear(levels.limit?.mgPerKg) ? levels.limit : null;
  const former = isNear(levels.former?.mgPerKg) ? levels.former : null;
  const end = ROOM * Math.max(near, limit?.mgPerKg ?? 0, former?.mgPerKg ?? 0);
  const words = captions({ ...levels, limit, former });
  if (!(end > 0) || words.length === 0) return null; // a level alone says nothing
  const at = (level: number) => `${Math.min(100, (100 * level) / end)}%`;
  return (
    <figure class="bar-of-dose">
      <div
        class="road"
        role="img"
        aria-label={[`${formatPlain(now, 3)} mg/kg now`, ...words.map(({ words }) => words)].join('; ')}
      >
        {liked && <i class="liked" style={{ left: at(liked.low), right: `calc(100% - ${at(liked.high)})` }} />}
        <i class={limit && now > limit.mgPerKg ? 'level over' : 'level'} style={{ width: at(now) }} />
        {former && <i class="mark former" style={{ left: at(former.mgPerKg) }} />}
        {target !== null && <i class="mark target" style={{ left: at(target) }} />}
        {limit && <i class="mark limit" style={{ left: at(limit.mgPerKg) }} />}
      </div>
      <figcaption aria-hidden="true">
        {words.map(({ sign, words }) => (
          <span>
            {sign} {words}
          </span>
        ))}
      </figcaption>
    </figure>
  );
}

interface Caption {
  /** As it is drawn on the bar. */
  readonly sign: string;
  readonly words: string;
}

function captions({ liked, limit, former, target }: Levels): Caption[] {
  const number = (mgPerKg: number) => formatPlain(mgPerKg, 3);
  const all: Caption[] = [];
  if (target !== null) all.push({ sign: '▏', words: `target ${number(target)} mg/kg` });
  if (liked)
    all.push({
      sign: '▬',
      words: `liked ${number(liked.low)}${liked.low === liked.high ? '' : ` to ${number(liked.high)}`} mg/kg`,
    });
  if (limit)
    all.push({
      sign: '▎',
      words: `limit ${number(limit.mgPerKg)} mg/kg: ${limit.of}${limit.sure ? '' : ', check the law'}`,
    });
  if (former) all.push({ sign: '┆', words: `once allowed ${number(former.mgPerKg)} mg/kg` });
  return all;
}
