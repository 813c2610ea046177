import { Later } from '../ui/Later';
import { foundByShortId, foundByTyping, shortIdInCode } from '../records/shortId';
import { allLabelled, codeOf, nameOf, type Labelled } from './labelled';
import { go } from './route';

/** The camera opens at once; the record of the label that it sees is shown. What any other code says is never used. */
export function ScanPage() {
  const props = {
    title: 'Scan a label',
    onCode(text: string) {
      const shortId = shortIdInCode(text);
      if (shortId === null) return 'That is not a label of Minim.';
      const found = foundByShortId(shortId, allLabelled());
      if (found.length === 0) return 'Nothing on this Shelf has that label.';
      if (found.length > 1) return 'Two things on this Shelf share that label. Type the code that is written on it.';
      navigator.vibrate?.(30);
      return opened(found[0]!.id);
    },
    find: (typed: string) => foundByTyping(typed, allLabelled().map(listed)),
    onPick: opened,
    onClose: () => history.back(),
  };
  return <Later load={async () => (await import('../ui/Scanner')).Scanner} props={props} />;
}

function opened(id: string): string {
  go(['record', id], 'replace');
  return '';
}

function listed(record: Labelled): { id: string; code: string; words: string } {
  const code = codeOf(record);
  const kind = record.kind === 'bottle' ? ', bottle' : '';
  return { id: record.id, code, words: `${code} · ${nameOf(record)}${kind}` };
}
