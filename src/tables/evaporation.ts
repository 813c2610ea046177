import type { EvaporatingSolvent } from '../core/liquid/dryOff';
import { celsius } from '../core/number/units';

/** A solvent's drying figures with where they come from. `verified`: read in the source; otherwise typical, not confirmed. */
export interface EvaporationRow extends EvaporatingSolvent {
  readonly id: string;
  /** Evaporation rate, n-butyl acetate = 1. */
  readonly rateSource: string;
  readonly rateVerified: boolean;
  /** Vapour pressure at 20 °C, Pa. */
  readonly pressureSource: string;
  readonly pressureVerified: boolean;
}

/** Diffusivities (m²/s, vapour in air) of every row are typical, not confirmed; they decide orders of magnitude only. */
export const evaporation: readonly EvaporationRow[] = [
  {
    id: 'ethanol',
    words: 'ethanol 95 %',
    evaporationRate: 1.4,
    rateSource: 'ilpi.com, evaporation rate reference; another data page prints 3.3, against all others',
    rateVerified: true,
    film: { vapourPressure: 5870, molarMass: 46.07, density: 0.789, diffusivity: 1.19e-5 },
    pressureSource: 'saturation 5.8 % at 20 °C (5.88 kPa), safety data of ethyl alcohol; 12.4 kPa printed elsewhere is wrong',
    pressureVerified: true,
    // Poling, Prausnitz & O'Connell, The Properties of Gases and Liquids, 5th ed., 276.5–369.54 K
    antoine: { a: 10.33675, b: 1648.22, c: -42.232, from: celsius(4), to: celsius(40) },
  },
  {
    id: 'ethanol-absolute',
    words: 'ethanol, absolute',
    evaporationRate: 1.7,
    rateSource: 'solvent charts',
    rateVerified: false,
    film: { vapourPressure: 5870, molarMass: 46.07, density: 0.789, diffusivity: 1.19e-5 },
    pressureSource: 'saturation 5.8 % at 20 °C (5.88 kPa), safety data of ethyl alcohol',
    pressureVerified: true,
    antoine: { a: 10.33675, b: 1648.22, c: -42.232, from: celsius(4), to: celsius(40) },
  },
  {
    id: 'isopropanol',
    words: 'isopropyl alcohol',
    evaporationRate: 1.7,
    rateSource: 'solvent trade, evaporation rate guide, printed "~1.7"; data sheets from memory say 1.5',
    rateVerified: true,
    film: { vapourPressure: 4400, molarMass: 60.1, density: 0.785, diffusivity: 1e-5 },
    pressureSource: '4.4 kPa, engineeringtoolbox.com',
    pressureVerified: true,
    // Poling, Prausnitz & O'Connell, 5th ed., 281.28–373.46 K
    antoine: { a: 10.24268, b: 1580.92, c: -53.54, from: celsius(9), to: celsius(40) },
  },
  {
    id: 'water',
    words: 'water',
    evaporationRate: 0.3,
    rateSource: 'ilpi.com, evaporation rate reference',
    rateVerified: true,
    film: { vapourPressure: 2340, molarMass: 18.015, density: 0.998, diffusivity: 2.5e-5 },
    pressureSource: 'steam tables, 2339 Pa, from memory',
    pressureVerified: false,
    antoine: null,
  },
  {
    id: 'ethyl-acetate',
    words: 'ethyl acetate',
    evaporationRate: 2.8,
    rateSource: 'solvent trade, evaporation rate guide, printed "~2.8"',
    rateVerified: true,
    film: null,
    pressureSource: '',
    pressureVerified: false,
    antoine: null,
  },
  {
    id: 'propylene-glycol',
    words: 'propylene glycol',
    evaporationRate: 0.01,
    rateSource: 'data sheets; the film model gives about 0.005',
    rateVerified: false,
    film: { vapourPressure: 10.6, molarMass: 76.09, density: 1.036, diffusivity: 9e-6 },
    pressureSource: '10.6 Pa at 20 °C, International Chemical Safety Card 0321',
    pressureVerified: true,
    antoine: null,
  },
  {
    id: 'triacetin',
    words: 'triacetin',
    evaporationRate: null,
    rateSource: 'no figure found',
    rateVerified: false,
    film: { vapourPressure: 0.33, molarMass: 218.2, density: 1.156, diffusivity: 6e-6 },
    pressureSource: '0.33 Pa at 25 °C',
    pressureVerified: false,
    antoine: null,
  },
  {
    id: 'benzyl-alcohol',
    words: 'benzyl alcohol',
    evaporationRate: null,
    rateSource: 'no figure found',
    rateVerified: false,
    film: { vapourPressure: 8.4, molarMass: 108.14, density: 1.045, diffusivity: 8e-6 },
    pressureSource: '8.4 Pa at 20 °C, typical',
    pressureVerified: false,
    antoine: null,
  },
];
