/** A word in localStorage, outside both copies, that something was kept on this phone: without it an emptied phone looks like a new one. */
export interface Marker {
  /** Id of the store. */
  readonly store: string;
  /** Day of the last session in which something was stored, YYYY-MM-DD. */
  readonly on: string;
}

const name = 'minim-kept';
let noted = '';

/** Notes that something is kept; once a session is enough. */
export function noteKept(store: string): void {
  if (noted === store) return;
  noted = store;
  try {
    localStorage.setItem(name, JSON.stringify({ store, on: new Date().toISOString().slice(0, 10) } satisfies Marker));
  } catch {
    // no localStorage here: the journal alone tells then
  }
}

/** What was noted; null on a phone on which nothing was ever kept. */
export function keptBefore(): Marker | null {
  try {
    const marker: unknown = JSON.parse(localStorage.getItem(name) ?? 'null');
    return marker && typeof marker === 'object' && 'store' in marker && 'on' in marker ? (marker as Marker) : null;
  } catch {
    return null;
  }
}

/** Forgets that anything was kept. */
export function forgetKept(): void {
  noted = '';
  try {
    localStorage.removeItem(name);
  } catch {
    // nothing was noted
  }
}
