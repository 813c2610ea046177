import { useEffect, useState } from 'preact/hooks';

export const REST_SECONDS = 60; // our choice: published protocols take 30 s between trials

/** Counts the rest down from the moment of the last answer, ms since 1970. It advises; no one is held. */
export function RestClock({ since }: { since: number }) {
  const [now, setNow] = useState(Date.now);
  useEffect(() => {
    const timer = setInterval(() => setNow(Date.now()), 500);
    return () => clearInterval(timer);
  }, []);
  const left = Math.max(0, Math.ceil(REST_SECONDS - (now - since) / 1000));
  return (
    <p class="rest" role="timer">
      <b>{left > 0 ? left : 'ready'}</b>
      <span class="quiet">{left > 0 ? 'seconds of rest' : 'when you are'}</span>
    </p>
  );
}
