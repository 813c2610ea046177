import { useEffect, useRef } from 'preact/hooks';

interface Props {
  count: number;
  target: number | null;
  live: string;
  onTap: () => void;
}

/** Two touches or presses within this time are one. */
export const SAME_TOUCH_MS = 60; // our choice: a wet screen reports a second touch elsewhere within this time (tap tests: fingers need > 100 ms)

const RIM = 0.84; // of the height of the pad; our choice: what is over it is seen

/**
 * The place to tap once for each drop: answers on touch-down and takes Enter and Space too. It fills like a vial: to the rim with the last
 * drop, and over it with one too many, which the phone's buzz tells apart.
 */
export function TapPad({ count, target, live, onTap }: Props) {
  const taps = useTaps(onTap);
  useBuzz(count, target);
  const level = target ? RIM * Math.min(1, count / target) : count > 0 ? 0.5 : 0;
  const over = target !== null && count > target;
  return (
    <>
      <button {...taps} class={over ? 'pad over' : 'pad'}>
        <span class="level" style={{ transform: `scaleY(${over ? 1 : level})` }} />
        {target !== null && <span class="rim" style={{ bottom: `${RIM * 100}%` }} />}
        <span class="count">{count}</span> <span class="live">{live}</span>{' '}
        <span class="hint">Tap anywhere here for each drop</span>
      </button>
      <p class="unseen" role="status">
        {count} {live}
      </p>
    </>
  );
}

/** A long buzz with the last drop, two with each that is too many. */
function useBuzz(count: number, target: number | null): void {
  const before = useRef(count);
  useEffect(() => {
    if (target !== null && count > before.current && count >= target)
      navigator.vibrate?.(count === target ? 120 : [120, 80, 120]);
    before.current = count;
  }, [count]);
}

/** What a button needs to count drops: it answers on touch-down, once a touch, and takes Enter and Space too. */
export function useTaps(onTap: () => void) {
  const last = useRef(-Infinity);
  const tap = (event: { timeStamp: number }) => {
    if (event.timeStamp - last.current < SAME_TOUCH_MS) return;
    last.current = event.timeStamp;
    onTap();
    navigator.vibrate?.(15);
  };
  return {
    ref: useTapKeys(tap),
    onPointerDown: (event: PointerEvent) => event.button === 0 && tap(event),
    onClick: (event: MouseEvent) => event.detail === 0 && tap(event), // assistive technology clicks without a pointer
  };
}

/** Enter and Space count while the pad is on the screen; returns the ref of the pad. */
function useTapKeys(tap: (event: { timeStamp: number }) => void) {
  const pad = useRef<HTMLButtonElement>(null);
  useEffect(() => {
    // A foot switch or remote sends Enter or Space to wherever the focus is; only another control keeps it to itself.
    const key = (event: KeyboardEvent) => {
      const elsewhere = event.target instanceof Element && event.target.closest('button, input, a, textarea');
      if ((event.key !== 'Enter' && event.key !== ' ') || (elsewhere && elsewhere !== pad.current)) return;
      if (document.querySelector('dialog[open]')) return; // a sheet lies over the pad
      event.preventDefault(); // no click of its own on top
      if (event.type === 'keydown' && !event.repeat) tap(event);
    };
    addEventListener('keydown', key);
    addEventListener('keyup', key);
    return () => {
      removeEventListener('keydown', key);
      removeEventListener('keyup', key);
    };
  });
  return pad;
}
