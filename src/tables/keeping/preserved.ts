import type { FillTable } from '../../core/keeping/hotFill';
import { BREWERS, type HeatUnit } from '../../core/keeping/heat';
import type { Preservings } from '../../core/keeping/keeping';

/** The free acids of preservatives: constants as published tables of the active part use them. */
export const preservings: Preservings = { benzoic: { pKa: 4.19 }, sorbic: { pKa: 4.76 } };

/** A way to count heat, and for what it was made. */
export interface HeatKind extends HeatUnit {
  readonly id: 'soft' | 'beer' | 'juice' | 'spores';
  readonly name: string;
  readonly organism: string;
  /** Minutes at the temperature of reference that are published as enough, and up to which pH; null where no number holds for all. */
  readonly enough: { readonly minutes: number; readonly upToPh: number } | null;
  readonly source: string;
}

/** Ways to count heat. */
export const heatKinds: readonly HeatKind[] = [
  { id: 'soft', name: 'soft drink without fruit', organism: 'yeast and moulds', atC: 60, z: 7, enough: null, source: 'a maker of flow meters for bottlers: base 60 °C, z 7 °C for soft drinks too' },
  { id: 'juice', name: 'drink with fruit juice', organism: 'Cryptosporidium, E. coli O157, Salmonella, Listeria', atC: 71.1, z: 8.4, enough: { minutes: 0.1, upToPh: 4 }, source: 'FDA juice guidance: 6 s at 71.1 °C for apple juice to pH 4.0; z from its table' },
  { id: 'beer', name: 'beer', organism: 'what spoils beer', ...BREWERS, enough: null, source: 'PU = t · 1.393^(T − 60), as published for beer' },
  { id: 'spores', name: 'vegetable or tomato juice', organism: 'spores of bacteria', atC: 80, z: 10, enough: null, source: 'a maker of flow meters for bottlers: base 80 °C, z 10 °C where spores are possible' },
];

const inC = (fahrenheit: number) => ((fahrenheit - 32) * 5) / 9;

/** Least °C when acidified food is filled. Source: University of Arkansas, fill temperatures for acidified foods (in °F: 150 at pH 3.0 and lower to 210 at 4.5). */
export const fillTable: FillTable = (
  [[3, 150], [3.1, 153], [3.2, 156], [3.3, 160], [3.4, 164], [3.5, 167], [3.6, 171], [3.7, 177], [3.8, 178], [3.9, 182], [4, 183], [4.1, 185], [4.2, 190], [4.3, 195], [4.4, 205], [4.5, 210]] as const
).map(([ph, fahrenheit]) => [ph, inC(fahrenheit)]); // prettier-ignore
