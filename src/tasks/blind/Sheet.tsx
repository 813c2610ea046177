import { formatPlain } from '../../ui/format';
import type { Design } from './design';
import '../shared/codeList.css';

/** Which code is filled from which sample, set by set. Only for who fills the cups. */
export function Sheet({ design }: { design: Design }) {
  const { samples, sets, method, unit } = design;
  const reference = (k: number): boolean => method.id === 'duo-trio' && k === 0;
  return (
    <ol class="code-list">
      {sets.map(({ cups, level, card }, i) => (
        <li>
          {card === undefined ? (
            <span class="set">{level === undefined ? i + 1 : `${i + 1}, ${formatPlain(level, 3)} ${unit}`}</span>
          ) : (
            <b class="code card-code">{card}</b>
          )}
          {cups.map(({ code, sample }, k) => (
            <span class="cup">
              <b class="code">{reference(k) ? 'R' : card === undefined ? code : `${code}.`}</b> {samples[sample]}
            </span>
          ))}
        </li>
      ))}
    </ol>
  );
}
