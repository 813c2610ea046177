/** 'now', 'in 12 min', 'in 3 h' of a moment to come; both in ms since 1970. */
export function until(then: number, now: number): string {
  const minutes = Math.ceil((then - now) / 60_000);
  if (minutes <= 0) return 'now';
  return minutes < 90 ? `in ${minutes} min` : `in ${Math.round(minutes / 60)} h`;
}

/** '12 min ago', '3 h ago', '2 days ago'; both in ms since 1970. */
export function ago(then: number, now: number): string {
  const minutes = Math.max(0, Math.round((now - then) / 60_000));
  if (minutes < 1) return 'just now';
  if (minutes < 60) return `${minutes} min ago`;
  const hours = Math.round(minutes / 60);
  if (hours < 48) return `${hours} h ago`;
  return `${Math.round(hours / 24)} days ago`;
}
