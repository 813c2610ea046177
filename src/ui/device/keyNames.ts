/** Keys that type nothing by themselves. */
export const MODIFIERS: readonly string[] = [
  'Shift',
  'Control',
  'Alt',
  'AltGraph',
  'Meta',
  'Fn',
  'CapsLock',
  'NumLock',
];

/** What a key is called in the store: as the browser names it, letters small; '' when the phone does not say. */
export function keyName({ key, code }: KeyboardEvent): string {
  const name = key === 'Unidentified' ? code : key;
  return name.length === 1 ? name.toLowerCase() : name;
}

/** What a key is called on the screen: "Page Down", "B". */
export function keyWords(name: string): string {
  if (name === ' ') return 'Space';
  return name.length === 1 ? name.toUpperCase() : name.replace(/([a-z])([A-Z])/g, '$1 $2');
}

/** Catches the next key before anything else does, its release too; Escape and Tab give up (null). Returns what ends it. */
export function catchKey(then: (name: string | null) => void): () => void {
  const hold = (event: KeyboardEvent) => {
    event.preventDefault();
    event.stopPropagation();
  };
  const down = (event: KeyboardEvent) => {
    const name = keyName(event);
    if (MODIFIERS.includes(name) || event.repeat) return;
    if (name === 'Tab' || name === 'Escape') return then(null);
    hold(event);
    addEventListener('keyup', hold, { capture: true, once: true });
    then(name);
  };
  addEventListener('keydown', down, true);
  return () => removeEventListener('keydown', down, true);
}
