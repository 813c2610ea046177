import { useLayoutEffect, useRef } from 'preact/hooks';

const ASLEEP_MS = 400; // after a drop; our choice: what a finger that still counts touches beside the pad is no touch

/** Whether a touch comes later than that after the last drop. What is pressed by a key is meant. */
export function useAwake(count: number): (touch: MouseEvent) => boolean {
  const last = useRef({ count, at: -Infinity });
  useLayoutEffect(() => {
    last.current = { count, at: count > last.current.count ? performance.now() : last.current.at };
  }, [count]);
  return ({ detail, timeStamp }) => detail === 0 || timeStamp - last.current.at >= ASLEEP_MS;
}
