import { lettered } from '../../core/label/shortCode';
import type { Vial } from '../../records/kind/vial';
import { isOf } from '../../records/kind/kinds';
import { list, shelf } from '../../records/shelf';
import { strengthWords, twinsOf } from './labelled';

/** The codes of all vials of the Shelf. */
export function vialCodes(): string[] {
  return list('vial').map((vial) => vial.code);
}

/** T1, T2, … for the letter T: the first that no vial has. */
export function numberedVialCode(letter: string): string {
  return numbered(letter, vialCodes());
}

/** B1, B2, …: the first that no batch has, put away or not. */
export function numberedBatchCode(): string {
  const taken = [...shelf.records.value.values()].flatMap((record) =>
    isOf('batch', record) ? (record.code ?? []) : [],
  );
  return numbered('B', taken);
}

function numbered(letter: string, taken: readonly string[]): string {
  let n = 1;
  while (taken.includes(`${letter}${n}`)) n++;
  return `${letter}${n}`;
}

/** This code, or with a letter behind it while a vial in use has it with the same strength, made on the same day, or one `beside` it. */
export function freeVialCode(
  code: string,
  label: Vial['label'],
  madeOn: string,
  beside: readonly Pick<Vial, 'code' | 'label' | 'madeOn'>[] = [],
): string {
  const isBeside = (one: string) =>
    beside.some(
      (vial) => vial.code === one && vial.madeOn === madeOn && strengthWords(vial.label) === strengthWords(label),
    );
  return lettered(code, (one) => isBeside(one) || twinsOf(one, label, madeOn).length > 0);
}
