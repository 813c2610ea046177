const MINUTE = 60_000;

/**
 * What the nose should be spared now, or '' when it may go on. `smelled`: moments of readings, ms since 1970.
 * Our choice, after published trials (30 s between trials) and bench habit: half a minute between two, a few minutes
 * after six in a row, enough for now after twelve in an hour.
 */
export function restHint(smelled: readonly number[], now: number): string {
  const within = (ms: number): number => smelled.filter((at) => at <= now && now - at < ms).length;
  const last = Math.max(-Infinity, ...smelled.filter((at) => at <= now));
  if (within(60 * MINUTE) >= 12) return 'Twelve within an hour: enough for this nose, continue later.';
  if (within(15 * MINUTE) >= 6 && now - last < 3 * MINUTE) return 'Six in a row: rest the nose 2 to 5 min, fresh air.';
  return now - last < MINUTE / 2 ? 'Half a minute of fresh air before the next.' : '';
}
