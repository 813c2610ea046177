/**
 * What a typed text says as a number. `two`: one comma or point that may group thousands or be the decimal sign; both readings,
 * the grouped one first. `grouped`: it has signs that group thousands. `none`: it is no number, and why: other characters than
 * digits and signs, signs in places where none can be, or more than any number can hold.
 */
export type Typed =
  | { readonly kind: 'empty' }
  | { readonly kind: 'number'; readonly value: number; readonly grouped: boolean }
  | { readonly kind: 'two'; readonly readings: readonly [grouped: number, decimal: number] }
  | { readonly kind: 'none'; readonly why: 'characters' | 'signs' | 'endless' };

const PLAIN = /^(\d+[.,]?\d*|[.,]\d+)$/;
const TWO = /^[1-9]\d{0,2}[.,]\d{3}$/;
const GROUPED = /^[1-9]\d{0,2}([ '.,])\d{3}(?:\1\d{3})*(?:(?!\1)[.,]\d*)?$/;

/**
 * The one reader of typed numbers, without unit. Comma and point both serve as decimal sign; blanks (plain, no-break, thin),
 * apostrophes, commas and points group thousands where they separate threes: "12 500,5", "1'000", "1.000,5", "1,000,000".
 * "1,000" and "1.000" have two readings, and both are returned; "0,123" and "01.234" have one, since no thousands begin with 0.
 * "−" and "-" are minus. Digits 0 to 9 only; any length, though a value must be finite. Source: the decimal signs and the
 * grouping of ISO 80000-1, 7.3, and of common use.
 */
export function readNumber(text: string): Typed {
  const bare = text
    .replace(/\p{Cf}/gu, '') // marks of direction and of zero width
    .trim()
    .replace('−', '-')
    .replace(/[\u00a0\u2007\u2009\u202f]/g, ' ')
    .replace(/’/g, "'");
  if (bare === '') return { kind: 'empty' };
  if (/[^\d.,' +-]/.test(bare)) return { kind: 'none', why: 'characters' };
  const [, sign, body] = /^([+-]?)(.*)$/.exec(bare)!;
  const number = (digits: string) => Number(`${sign}${digits.replace(',', '.')}`);
  if (TWO.test(body!)) return { kind: 'two', readings: [number(body!.replace(/[.,]/, '')), number(body!)] };
  const groups = GROUPED.exec(body!);
  if (!groups && !PLAIN.test(body!)) return { kind: 'none', why: 'signs' };
  const value = number(groups ? body!.replaceAll(groups[1]!, '') : body!);
  return Number.isFinite(value)
    ? { kind: 'number', value, grouped: groups !== null }
    : { kind: 'none', why: 'endless' };
}

/**
 * A number as a text that {@link readNumber} reads as this number alone: with a point, and with a 0 in front where three decimals
 * could be taken for thousands ("01.234"). Any unit; 0, or from 1e-6 to below 1e21 on either side of it. By definition.
 */
export function typedText(value: number): string {
  return String(value).replace(/^(-?)(?=[1-9]\d{0,2}\.\d{3}$)/, '$10');
}

/** A text of {@link typedText} for reading: without its 0 in front. Any other text stays as it is. By definition. */
export function withoutGuard(text: string): string {
  return text.replace(/^(-?)0(?=[1-9]\d{0,2}\.\d{3}$)/, '$1');
}
