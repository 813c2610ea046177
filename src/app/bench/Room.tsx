import type { ComponentChildren } from 'preact';
import { useLayoutEffect, useRef } from 'preact/hooks';
import { whenLoaded } from '../../records/shelf';

const SETTLED = 1500; // ms after all is read; our choice: by then every line of it has come

interface Props {
  /** news: all that is above the tasks. due: what is due, above the paused runs. */
  name: 'news' | 'due';
  children: ComponentChildren;
}

const settled = new Set<Props['name']>(); // rooms of which all lines have come once: they are drawn at once from then on

/** What comes line by line, in the room that it took last time: what is below does not move under a finger. */
export function Room({ name, children }: Props) {
  const inner = useRef<HTMLDivElement>(null);
  useLayoutEffect(() => {
    // Leaving the Bench is no news, so `inner` is looked at again each time.
    const measure = () => inner.current && keepRoom(name, inner.current.offsetHeight);
    const sizes = new ResizeObserver(measure);
    const watch = () => {
      if (!inner.current) return;
      settled.add(name);
      sizes.observe(inner.current);
    };
    if (settled.has(name)) {
      measure();
      watch();
    } else void whenLoaded.then(() => setTimeout(watch, SETTLED));
    return () => sizes.disconnect();
  }, []);
  return (
    <div class={name}>
      <div ref={inner}>{children}</div>
    </div>
  );
}

/** Keeps the room in px; public/boot.js gives it before any other script runs. */
function keepRoom(name: Props['name'], height: number): void {
  document.documentElement.style.setProperty(`--${name}`, `${height}px`);
  try {
    localStorage.setItem(`minim-${name}`, String(height));
  } catch {
    // no localStorage here: what is below moves once
  }
}
