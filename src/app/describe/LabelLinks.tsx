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
