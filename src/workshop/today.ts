/** Today, or that many days from now, as YYYY-MM-DD, by the phone's own clock and zone. */
export function today(daysFromNow = 0): string {
  const now = new Date();
  return new Date(now.getTime() - now.getTimezoneOffset() * 60_000 + daysFromNow * 86_400_000)
    .toISOString()
    .slice(0, 10);
}
