import type { Design } from './design';

/** Which code is filled from which sample, set by set. Only for who fills the cups. */
export function Sheet({ design }: { design: Design }) {
  const { samples, sets, method } = design;
  return (
    <ol class="cup-list">
      {sets.map(({ cups, level }, i) => (
        <li>
          <span class="set">{level === undefined ? i + 1 : `${i + 1}, ${Number(level.toPrecision(3))} mg/kg`}</span>
          {cups.map(({ code, sample }, k) => (
            <span class="cup">
              <b class="code">{method.id === 'duo-trio' && k === 0 ? 'R' : code}</b> {samples[sample]}
            </span>
          ))}
        </li>
      ))}
    </ol>
  );
}
