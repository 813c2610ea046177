import type { ComponentChildren } from 'preact';
import { useEffect, useRef } from 'preact/hooks';
import { whenLoaded } from '../../records/shelf';

const SETTLED = 1500; // ms after all is read; our choice: by then every line of it has come

/** What stands above the tasks. It comes line by line, in the room that it took last time: the tasks do not move under a finger. */
export function News({ children }: { children: ComponentChildren }) {
  const inner = useRef<HTMLDivElement>(null);
  useEffect(() => {
    // Leaving the Bench is no news, so `inner` is looked at again each time.
    const sizes = new ResizeObserver(() => inner.current && keepRoom(inner.current.offsetHeight));
    void whenLoaded.then(() => setTimeout(() => inner.current && sizes.observe(inner.current), SETTLED));
    return () => sizes.disconnect();
  }, []);
  return (
    <div class="news">
      <div ref={inner}>{children}</div>
    </div>
  );
}

/** Keeps the room in px; public/boot.js gives it before any other script runs. */
function keepRoom(height: number): void {
  document.documentElement.style.setProperty('--news', `${height}px`);
  try {
    localStorage.setItem('minim-news', String(height));
  } catch {
    // no localStorage here: the tasks move once
  }
}
