import { isLabelled, isOf, type AnyRecord } from '../../records/kind/kinds';
import { label, scan } from '../../ui/drawn/firstIcons';
import { Icon } from '../../ui/drawn/Icon';
import { go } from '../nav/route';

/** Opens the camera. */
export function ScanButton() {
  return (
    <button class="round" onClick={() => go(['scan'])} aria-label="Scan a label">
      <Icon of={scan} />
    </button>
  );
}

/** Opens the page where labels of many are picked. */
export function LabelsButton() {
  return (
    <button class="round labels-button" onClick={() => go(['labels'])} aria-label="Print labels">
      <Icon of={label} />
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
