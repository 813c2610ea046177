import { resultFigures, type Result } from './result';

/** What is said where the ± would be. */
function besides({ bound, words }: Result): string {
  if (words !== undefined) return '';
  return bound === undefined ? 'exact' : 'a bound';
}

/** A number with its ±, and the way to how it was worked out. */
export function ResultLine({ result, big, onHow }: { result: Result; big: boolean; onHow: () => void }) {
  const { value, uncertainty } = resultFigures(result);
  const beside = uncertainty ? `± ${uncertainty} ${result.unit}`.trim() : besides(result);
  return (
    <div class={big ? 'result big' : 'result'}>
      <span class="label">{result.label}</span>
      <span class="number">
        <b>{value}</b> <span class="unit">{result.words === undefined && result.unit}</span>
      </span>
      <button class="how" onClick={onHow}>
        {beside && `${beside} · `}how?<span class="unseen"> {result.label}</span>
      </button>
    </div>
  );
}
