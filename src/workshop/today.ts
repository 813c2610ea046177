/** Today, or that many days from now, as YYYY-MM-DD, by the phone's own clock and zone. */
export function today(daysFromNow = 0): string {
  return dayOfMoment(Date.now() + daysFromNow * 86_400_000);
}

/** The day of a moment (ms since 1970, or ISO 8601) as YYYY-MM-DD, by the phone's own zone. */
export function dayOfMoment(moment: number | string): string {
  const at = new Date(moment);
  return new Date(at.getTime() - at.getTimezoneOffset() * 60_000).toISOString().slice(0, 10);
}
