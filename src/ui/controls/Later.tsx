import { useSignal } from '@preact/signals';
import type { ComponentType } from 'preact';
import { useEffect } from 'preact/hooks';
import { whyGone } from '../codeGone';

/** Parts that are here already: they are shown at once, so that going back finds the page as long as it was. */
const here = new WeakMap<object, unknown>();

/** A part whose code is fetched when it is first shown. */
export function Later<P extends object>({ load, props }: { load: () => Promise<ComponentType<P>>; props: P }) {
  const part = useSignal((here.get(load) as ComponentType<P> | 'gone' | undefined) ?? null);
  useEffect(() => {
    if (part.value !== null) return;
    load().then(
      (loaded) => {
        here.set(load, loaded);
        part.value = loaded;
      },
      () => (part.value = 'gone'),
    );
  }, []);
  if (part.value === 'gone') return <Gone />;
  const Part = part.value;
  return Part ? <Part {...props} /> : <div class="page" aria-busy="true" />;
}

function Gone() {
  return (
    <div class="page">
      <p class="trouble" role="alert">
        This part could not be fetched. {whyGone()} Nothing is lost.
      </p>
      <button class="second" onClick={() => location.reload()}>
        Open Minim again
      </button>
    </div>
  );
}
