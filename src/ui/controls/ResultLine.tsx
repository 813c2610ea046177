import { formatMeasured } from '../format';
import type { Result } from './result';

/** A number with its ±, and the way to how it was worked out. */
export function ResultLine({ result, big, onHow }: { result: Result; big: boolean; onHow: () => void }) {
  const { value, uncertainty } = formatMeasured(result.amount);
  return (
    <div class={big ? 'result big' : 'result'}>
      <span class="label">{result.label}</span>
      <span class="number">
        <b>{value}</b> <span class="unit">{result.unit}</span>
      </span>
      <button class="how" onClick={onHow}>
        {uncertainty ? `± ${uncertainty}` : 'exact'} · how?<span class="unseen"> {result.label}</span>
      </button>
    </div>
  );
}
