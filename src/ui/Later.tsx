import { useSignal } from '@preact/signals';
import type { ComponentType } from 'preact';
import { useEffect } from 'preact/hooks';

/** A part whose code is fetched when it is first shown. */
export function Later<P extends object>({ load, props }: { load: () => Promise<ComponentType<P>>; props: P }) {
  const part = useSignal<ComponentType<P> | 'gone' | null>(null);
  useEffect(() => {
    load().then(
      (loaded) => (part.value = loaded),
      () => (part.value = 'gone'), // another window has updated Minim, and this one runs the old code
    );
  }, []);
  if (part.value === 'gone')
    return (
      <p class="trouble" role="alert">
        This part of Minim could not be loaded. Nothing is lost: close Minim and open it anew.
      </p>
    );
  const Part = part.value;
  return Part ? <Part {...props} /> : <div class="page" aria-busy="true" />;
}
