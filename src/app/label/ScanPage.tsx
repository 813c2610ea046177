import { foundByTyping } from '../../records/kind/shortId';
import { listed, meaningOf } from '../../tasks/screen/LabelCheck';
import { allLabelled } from '../../workshop/thing/labelled';
import { Later } from '../../ui/controls/Later';
import { back, go } from '../nav/route';

/** The camera opens at once; the record of the label that it sees is shown. What any other code says is never used. */
export function ScanPage() {
  const props = {
    title: 'Scan a label',
    onCode: (text: string) => meaningOf(text, opened),
    find: (typed: string) => foundByTyping(typed, allLabelled().map(listed)),
    onPick: opened,
    onClose: back,
  };
  return (
    <main>
      <Later load={async () => (await import('../../ui/device/Scanner')).Scanner} props={props} />
    </main>
  );
}

function opened(id: string): string {
  navigator.vibrate?.(30);
  go(['record', id], 'replace');
  return '';
}
