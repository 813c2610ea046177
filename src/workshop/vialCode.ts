import { freeCode } from '../core/label/shortCode';
import { list } from '../records/shelf';
import { leftOf } from '../records/stock';

/** The codes of all vials of the Shelf. */
export function vialCodes(): string[] {
  return list('vial').map((vial) => vial.code);
}

/** T1, T2, … for the letter T: the first that no vial has. */
export function numberedVialCode(letter: string): string {
  const taken = new Set(vialCodes());
  let n = 1;
  while (taken.has(`${letter}${n}`)) n++;
  return `${letter}${n}`;
}

/** This code, or with something behind it while another vial in use has it: on a strip it is all that one sees. */
export function freeVialCode(code: string): string {
  const vials = list('vial');
  return freeCode(code, (one) => vials.some((vial) => vial.code === one && leftOf(vial)?.value !== 0));
}
