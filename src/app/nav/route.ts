import { signal } from '@preact/signals';
import { whenBackIsDone } from '../../ui/device/backEntry';

/** The parts of the hash: #/run/<id>/<step> is ['run', id, step]. An empty one is the Bench. */
export const route = signal<readonly string[]>(parse());

function parse(): string[] {
  try {
    return location.hash.replace(/^#\/?/, '').split('/').filter(Boolean).map(decodeURIComponent);
  } catch {
    return []; // a % that encodes nothing
  }
}

/** What the browser keeps with an entry of its history. */
interface Entry {
  /** How many pages of Minim lie behind it, as far as they were opened one from the other. */
  readonly depth?: number;
  /** Depth of the page at which the pages of this one thing began: its first two parts are theirs. */
  readonly began?: number;
  /** Hash of the page that they were opened from. */
  readonly from?: string;
}

function entry(): Entry {
  return (history.state as Entry | null) ?? {};
}

let passing = false; // pages are gone past that are not to be shown
const follow = () => void (passing || (route.value = parse()));
addEventListener('hashchange', follow);
addEventListener('popstate', follow);

/** The hash of a page. */
export function hashOf(...parts: string[]): string {
  return `#/${parts.map(encodeURIComponent).join('/')}`;
}

/** Goes to a page; `replace` leaves no way back to this one. */
export function go(parts: readonly string[], how: 'push' | 'replace' = 'push'): void {
  whenBackIsDone(() => {
    const hash = hashOf(...parts);
    const onwards = how === 'push' && hash !== location.hash;
    const next = entryOf(parts, onwards);
    if (onwards) history.pushState(next, '', hash);
    else history.replaceState(next, '', hash);
    route.value = parse();
    if (onwards) scrollTo(0, 0);
  });
}

function entryOf(parts: readonly string[], onwards: boolean): Entry {
  const { depth = 0, began = depth, from } = entry();
  const here = parse();
  const sameThing = parts.length > 1 && parts[0] === here[0] && parts[1] === here[1];
  const next = depth + (onwards ? 1 : 0);
  if (sameThing) return { depth: next, began, ...(from !== undefined && { from }) };
  if (onwards) return { depth: next, began: next, from: hashOf(...here) };
  return { depth: next, began: next, ...(began === depth && from !== undefined && { from }) };
}

/** Goes back to where this page was opened from; where it was the first, to the page that it is under. */
export function back(): void {
  whenBackIsDone(() => {
    if ((entry().depth ?? 0) > 0) history.back();
    else go(above(parse()), 'replace');
  });
}

/** The page that another one is under: of what is below a record that record, else the Bench, Shelf or Book. */
function above([page = '', id, sub]: readonly string[]): string[] {
  if (page === 'record' && id && sub) return [page, id];
  if ((page === 'sheet' || page === 'formula') && id) return ['record', id];
  return (page === 'shelf' && id) || page === 'catalogue' ? ['shelf'] : [];
}

/** Leaves all pages of the thing that is shown, for the page that they were opened from; for the Bench where they were the first. */
export function leaveThing(): void {
  whenBackIsDone(() => {
    const { depth = 0, began = depth } = entry();
    if (began > 0) history.go(began - depth - 1);
    else leaveThingFor([]);
  });
}

/** Leaves all pages of the thing that is shown for another page, which takes their place: its way back is that of the first of them. */
export function leaveThingFor(parts: readonly string[]): void {
  whenBackIsDone(() => {
    const { depth = 0, began = depth, from } = entry();
    if (began > 0 && from === hashOf(...parts)) history.go(began - depth - 1);
    else if (began < depth) goPast(depth - began, () => go(parts, 'replace'));
    else go(parts, 'replace');
  });
}

const LONGEST = 500; // ms; our choice, as for an entry that is taken off: it takes a few, and nothing must wait for ever

/** Goes back by some entries without showing where that leads, then does the work. */
function goPast(entries: number, then: () => void): void {
  passing = true;
  const there = () => {
    clearTimeout(timer);
    removeEventListener('popstate', there);
    passing = false;
    then();
  };
  const timer = setTimeout(there, LONGEST);
  addEventListener('popstate', there);
  history.go(-entries);
}
