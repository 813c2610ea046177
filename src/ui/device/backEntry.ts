let takenOff: Promise<void> | null = null;

/**
 * Puts an entry on the browser's history that the phone's back takes off; then `back` is called. Returns what takes the entry off without
 * that, when what it stood for has closed by itself.
 */
export function onBack(back: () => void): () => void {
  let state: 'waits' | 'there' | 'gone' = 'waits';
  const pop = () => {
    state = 'gone';
    removeEventListener('popstate', pop);
    back();
  };
  whenBackIsDone(() => {
    if (state === 'gone') return;
    history.pushState({ ...(history.state as object | null), over: true }, '');
    addEventListener('popstate', pop);
    state = 'there';
  });
  return () => {
    removeEventListener('popstate', pop);
    if (state === 'there' && (history.state as { over?: true } | null)?.over) takeOff();
    state = 'gone';
  };
}

const LONGEST = 500; // ms; our choice: an entry goes within a few, and a browser that says nothing must hold nobody up

function takeOff(): void {
  takenOff = new Promise((settle) => {
    const settled = () => {
      removeEventListener('popstate', settled);
      takenOff = null;
      settle();
    };
    addEventListener('popstate', settled);
    setTimeout(settled, LONGEST);
    history.back();
  });
}

/** Does the work when no entry is on its way off the history: what is pushed in that moment would be taken off in its place. */
export function whenBackIsDone(work: () => void): void {
  if (takenOff) void takenOff.then(work);
  else work();
}
