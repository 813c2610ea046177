import { useEffect, useRef } from 'preact/hooks';
import { countedPresses } from '../device/lineKeys';

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
 * The place to tap once for each drop: answers on touch-down, and takes Enter and Space while it has the focus. It fills like a vial: to the rim with the last
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

/**
 * What a button needs to count drops: it answers on touch-down, once a touch. Enter and Space count while it has the focus, which a touch does
 * not give it: a scale that types would press it.
 */
export function useTaps(onTap: () => void) {
  const last = useRef(-Infinity);
  const tap = (event: { timeStamp: number }) => {
    if (event.timeStamp - last.current < SAME_TOUCH_MS) return false;
    last.current = event.timeStamp;
    onTap();
    navigator.vibrate?.(15);
    return true;
  };
  const onKey = (event: KeyboardEvent) => {
    if (event.key !== 'Enter' && event.key !== ' ') return;
    event.preventDefault(); // no click of its own on top
    if (event.type === 'keydown' && !event.repeat && tap(event)) countedPresses.add(event);
  };
  return {
    'data-counts': '',
    onPointerDown: (event: PointerEvent) => void (event.button === 0 && tap(event)),
    onMouseDown: (event: MouseEvent) => event.preventDefault(),
    onClick: (event: MouseEvent) => void (event.detail === 0 && tap(event)), // assistive technology clicks without a pointer
    onKeyDown: onKey,
    onKeyUp: onKey,
  };
}
