import type { Rounding } from '../../core/nutrition/rounding';

const GUIDANCE = 'European Commission guidance on tolerances for nutrient values, December 2012, table 4, from memory, check';
const CFR = '21 CFR 101.9(c), from memory, check';

/** How each law or its guidance rounds; EU in g, kJ and kcal per 100 mL, US per serving. */
export const roundings = {
  euEnergy: { none: 0, steps: [{ upTo: Infinity, step: 1 }], source: GUIDANCE },
  euGrams: { none: 0.5, steps: [{ upTo: 9.95, step: 0.1 }, { upTo: Infinity, step: 1 }], source: GUIDANCE },
  euSalt: { none: 0.0125, steps: [{ upTo: 0.995, step: 0.01 }, { upTo: Infinity, step: 0.1 }], source: GUIDANCE },
  usCalories: { none: 0, steps: [{ upTo: 4.999, step: 1000 }, { upTo: 50, step: 5 }, { upTo: Infinity, step: 10 }], source: CFR },
  usGrams: { none: 0, steps: [{ upTo: 0.499, step: 1000 }, { upTo: Infinity, step: 1 }], source: CFR },
  usSodium: { none: 0, steps: [{ upTo: 4.999, step: 1000 }, { upTo: 140, step: 5 }, { upTo: Infinity, step: 10 }], source: CFR },
} as const satisfies Record<string, Rounding & { readonly source: string }>; // prettier-ignore
