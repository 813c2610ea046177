import { expanded, type Measured } from '../core/measured';

/** A number for reading, without trailing zeros and without a unit: at most `digits` significant ones. */
export function formatPlain(x: number, digits = 4): string {
  if (!Number.isFinite(x)) return '–';
  return x === 0 ? '0' : String(Number(x.toPrecision(digits))).replace('-', '−');
}

/** A number with a fixed count of decimals. */
export function formatFixed(x: number, decimals: number): string {
  return x.toFixed(decimals).replace('-', '−');
}

/** Decimals that show two significant digits of a doubt, 0 to 6. */
function decimalsFor(doubt: number): number {
  return Math.min(6, Math.max(0, 1 - Math.floor(Math.log10(doubt))));
}

/** A measured number and its ± at k = 2, both to two significant digits of the ±: { value: '1.04', doubt: '0.11' }. */
export function formatMeasured(a: Measured): { value: string; doubt: string } {
  const doubt = expanded(a);
  if (!(doubt > 0) || !Number.isFinite(doubt)) return { value: formatPlain(a.value), doubt: '' };
  const decimals = decimalsFor(doubt);
  return { value: formatFixed(a.value, decimals), doubt: formatFixed(doubt, decimals) };
}

/** '1.04 ± 0.11 %'; a measured number on one line. */
export function measuredText(a: Measured, unit: string): string {
  const { value, doubt } = formatMeasured(a);
  return `${value}${doubt && ` ± ${doubt}`} ${unit}`;
}

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
