import { isOf, type AnyRecord, type RecordOf } from '../../records/kind/kinds';
import { find } from '../../records/shelf';
import type { Result } from '../../ui/controls/result';
import { resultText } from '../../ui/controls/result';
import { formatShare } from '../../ui/format';
import { go } from '../nav/route';
import { leadOf } from './ThingHead';

/** The numbers of a thing beyond the one in its head: each a row, which opens how it was worked out. */
export function ThingNumbers({ record, results }: { record: AnyRecord; results: readonly Result[] }) {
  const lead = leadOf(record, results);
  const rows = results.map((result, i) => ({ result, i })).filter(({ i }) => i !== lead);
  if (rows.length === 0) return null;
  const beside = isOf('vial', record) ? sharesOf(record) : [];
  return (
    <section>
      <h2>{headOf(record)}</h2>
      <ul class="figures">
        {rows.map(({ result, i }) => (
          <li>
            <button onClick={() => go(['record', record.id, 'how', String(i)])}>
              <span>{result.label}</span>
              <b>{resultText(result)}</b>
              {beside[i] && <small>{beside[i]}</small>}
              <span class="unseen">: how this was worked out</span>
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}

function headOf(record: AnyRecord): string {
  if (isOf('vial', record)) return 'Result against target';
  return isOf('tasting', record) || isOf('batch', record) ? 'In the drink' : 'Numbers';
}

/** Of each material of a trial: its share of all neat material, and the share that its formula asks for. */
export function sharesOf({ contents, from }: RecordOf<'vial'>): string[] {
  const formula = from.map((id) => find('formula', id)).find(Boolean);
  const all = contents.reduce((sum, { strength }) => sum + strength.value, 0);
  const parts = formula?.lines.reduce((sum, { share }) => sum + share, 0) ?? 0;
  return contents.map(({ material, strength }) => {
    const share = strength.value / all;
    const line = formula?.lines.find((one) => one.material === material);
    if (!line) return `${formatShare(share)} of all`;
    return `${formatShare(share)} of all, target ${formatShare(line.share / parts)}`;
  });
}
