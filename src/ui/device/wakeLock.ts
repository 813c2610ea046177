/** Keeps the screen awake until the returned function is called; asks again when the page comes back to the front. */
export function keepAwake(): () => void {
  let lock: WakeLockSentinel | null = null;
  let wanted = true;
  const ask = () => {
    if (!wanted || document.visibilityState !== 'visible' || !('wakeLock' in navigator)) return;
    navigator.wakeLock.request('screen').then(
      (got) => (wanted ? (lock = got) : void got.release()),
      () => {}, // refused (low battery, or no such right): the run goes on without
    );
  };
  document.addEventListener('visibilitychange', ask);
  ask();
  return () => {
    wanted = false;
    document.removeEventListener('visibilitychange', ask);
    void lock?.release();
  };
}
