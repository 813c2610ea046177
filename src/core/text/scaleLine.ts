/**
 * One line of a scale, as it is typed by one that acts as a keyboard or sent through a cable. There is no standard for it: whatever holds one
 * number, and a unit of mass or none, is a weight; signs, headers, marks of stability and brackets are read where they are there.
 * Our own reading of what the manuals of balances have in common; the speed of keys plays no part in it.
 */

/** 'unknown': the line has no mark for it. */
export type Settled = 'yes' | 'no' | 'unknown';

/** What a line is like whatever it weighs: lines that were cut on the way are told by it. */
export interface LineShape {
  /** Signs from the first to the last. */
  readonly length: number;
  readonly decimals: number;
  /** As it was written; '' where the line has none. */
  readonly unit: string;
  /** Blanks or zeros fill it up, so that every line of this scale is as long. */
  readonly filled: boolean;
}

/** A weight that a scale wrote. */
export interface ScaleWeight {
  readonly kind: 'weight';
  readonly g: number;
  /** The number in grams as the one reader of typed numbers takes it, with the digits that the scale showed. */
  readonly text: string;
  readonly settled: Settled;
  /** Its last digits are in brackets: finer than the scale is verified for. */
  readonly unverified: boolean;
  readonly shape: LineShape;
}

/** Why a line is no weight. `unit`: another unit than of mass in grams. `overload`: it has letters or signs where the number should be. */
export type NoWeight = 'empty' | 'unit' | 'overload' | 'minus' | 'cut' | 'several' | 'unreadable';

/** What a line is. Of a refused one `g` is there where it was read (g, below zero), `unit` where that is what is wrong. */
export type ScaleLine =
  ScaleWeight | { readonly kind: 'refused'; readonly why: NoWeight; readonly unit?: string; readonly g?: number };

/** Grams in the units of mass that are read. By definition (SI). */
const GRAMS: Readonly<Record<string, number>> = { '': 1, g: 1, mg: 1e-3, kg: 1e3, µg: 1e-6, ug: 1e-6 };

/** Sign, digits with one point or comma, and digits in brackets. A comma behind a letter ends a header. */
const NUMBER = /([+-]?)\s*(\d+(?:[.,]\d*)?|(?<!\p{L})[.,]\d+)(?:\[([.,]?\d+)\])?/gu;
const LONGEST = 64; // signs; our choice: no line of a scale is longer
const SETTLED = ['ST', 'S'];
const MOVING = ['US', 'D', 'U', '?'];

/** Reads one whole line, without or with what ended it; grams. Our own. */
export function readScaleLine(line: string): ScaleLine {
  const written = line
    .replace(/[\r\n]+$/, '')
    .replace(/[\u0000-\u001f\u00a0\u2007\u2009\u202f]/g, ' ')
    .replace(/[−–]/g, '-')
    .replace(/μ/g, 'µ');
  if (written.trim() === '') return refused('empty');
  if (written.length > LONGEST) return refused('unreadable');
  if (written.split('[').length !== written.split(']').length) return refused('cut');
  const [first, second] = [...written.matchAll(NUMBER)];
  if (!first) return refused('overload');
  if (!second) return weightIn(written, first);
  return refused(/^[.,]/.test(second[0]) ? 'unreadable' : 'several');
}

function refused(why: NoWeight, more: { unit?: string; g?: number } = {}): ScaleLine {
  return { kind: 'refused', why, ...more };
}

/** The weight in a line that has one number. */
function weightIn(line: string, found: RegExpExecArray): ScaleLine {
  const [whole, sign, digits, bracket] = found;
  const head = line.slice(0, found.index);
  const tail = line.slice(found.index + whole.length);
  const [, word = '', rest = ''] = /^\s*([\p{L}%µ/]*)(.*)$/u.exec(tail)!;
  const unit = [...SETTLED, ...MOVING].includes(word.toUpperCase()) ? '' : word; // a mark stands where a unit may
  const open = /[.,]$/.test(digits!) && unit === '' && bracket === undefined;
  if (/^[.,]/.test(digits!) || open || /[\[\]]/.test(tail)) return refused('cut');
  const perUnit = GRAMS[unit.toLowerCase()];
  if (perUnit === undefined) return refused('unit', { unit });
  if (/[-+]\s*$/.test(head)) return refused('unreadable');
  const plain = `${digits}${bracket ?? ''}`.replace(',', '.');
  const text = textOf(plain, perUnit);
  const g = Number(text);
  if (sign === '-' && g > 0) return refused('minus', { g: -g });
  return {
    kind: 'weight',
    g,
    text,
    settled: settledOf(marksOf(`${head} ${word} ${rest}`), { sign: sign!, unit }),
    unverified: bracket !== undefined,
    shape: {
      length: line.length,
      decimals: decimalsOf(plain),
      unit: unit.toLowerCase(),
      filled: /^[+-]?(\s{2,}|0\d)/.test(whole) || /^\s{2,}|\s{2,}$|\s{3,}/.test(line),
    },
  };
}

/** Words and signs before and after number and unit, in capitals. */
function marksOf(text: string): string[] {
  return text
    .toUpperCase()
    .split(/[\s,;:]+/)
    .filter((mark) => mark !== '');
}

/** A mark says it; without one a sign that is always written, beside a unit that is written once the weight is settled. */
function settledOf(marks: readonly string[], { sign, unit }: { sign: string; unit: string }): Settled {
  if (marks.some((mark) => MOVING.includes(mark) || mark.endsWith('?'))) return 'no';
  if (marks.some((mark) => SETTLED.includes(mark)) || (sign !== '' && unit !== '')) return 'yes';
  return 'unknown';
}

/** The digits in grams, without zeros that fill up; three decimals with a 0 in front, so that they are not taken for thousands. */
function textOf(plain: string, perUnit: number): string {
  const places = Math.max(0, decimalsOf(plain) - Math.round(Math.log10(perUnit)));
  const digits = perUnit === 1 ? plain : (Number(plain) * perUnit).toFixed(places);
  return digits
    .replace(/^0+(?=\d)/, '')
    .replace(/\.$/, '')
    .replace(/^(?=[1-9]\d{0,2}\.\d{3}$)/, '0');
}

function decimalsOf(plain: string): number {
  return plain.includes('.') ? plain.length - plain.indexOf('.') - 1 : 0;
}

/** Whether two lines are of one shape; the length counts only where lines are filled up. By definition. */
export function sameShape(one: LineShape, other: LineShape): boolean {
  const alike = one.decimals === other.decimals && one.unit === other.unit && one.filled === other.filled;
  return alike && (!one.filled || one.length === other.length);
}

/**
 * Whether a line is a piece of one of the shapes that are known (a count of signs each): shorter, and no more in it. Of a scale that fills
 * its lines up every missing sign is told; of another one only missing decimals or a missing unit.
 * Our own.
 */
export function isCutShort(shape: LineShape, known: readonly LineShape[]): boolean {
  if (known.some((one) => sameShape(one, shape))) return false;
  return known.some((one) => {
    const less = shape.decimals <= one.decimals && (shape.unit === one.unit || shape.unit === '');
    return (
      less && shape.length < one.length && (one.filled || shape.decimals < one.decimals || shape.unit !== one.unit)
    );
  });
}
