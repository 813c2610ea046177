/** Browsers let a page make a sound only once it was tapped or a key was pressed: this is called in that moment. */
export function onFirstTouch(then: () => unknown): void {
  for (const type of ['click', 'keydown']) addEventListener(type, then, { once: true, capture: true });
}
