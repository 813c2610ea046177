import { isLabelled, isOf, type AnyRecord } from '../../records/kind/kinds';
import { go } from '../nav/route';

/** Opens the camera. */
export function ScanButton() {
  return (
    <button class="round" onClick={() => go(['scan'])} aria-label="Scan a label">
      <svg viewBox="0 0 24 24" width="22" height="22" fill="none" stroke="currentColor" stroke-width="2.2">
        <path d="M3 8V4.5A1.5 1.5 0 0 1 4.5 3H8M16 3h3.5A1.5 1.5 0 0 1 21 4.5V8M21 16v3.5a1.5 1.5 0 0 1-1.5 1.5H16M8 21H4.5A1.5 1.5 0 0 1 3 19.5V16M7 12h10" />
      </svg>
    </button>
  );
}

/** Opens the page where labels of many are picked. */
export function LabelsButton() {
  return (
    <button class="round labels-button" onClick={() => go(['labels'])} aria-label="Print labels">
      <svg viewBox="0 0 24 24" width="22" height="22" fill="none" stroke="currentColor" stroke-width="2.2">
        <path d="M3 6.5h13l5 5.5-5 5.5H3zM7 10h6M7 14h4" stroke-linejoin="round" />
      </svg>
    </button>
  );
}

/** On the page of what can carry a label: its label. On that of a layering: the labels of its strips. */
export function LabelOffer({ record }: { record: AnyRecord }) {
  const strips = isOf('layering', record) ? record.strips.map(({ vial }) => vial) : [];
  const ids = isLabelled(record) ? [record.id] : strips;
  if (ids.length === 0) return null;
  return (
    <button class="second" onClick={() => go(['labels', ids.join(','), ...(strips.length > 0 ? ['strips'] : [])])}>
      {strips.length > 0 ? 'Print strip labels' : 'Print label'}
    </button>
  );
}
