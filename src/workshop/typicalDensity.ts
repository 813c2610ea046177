/** Density of an aroma material no one has looked up, g/mL: most oils and aroma liquids lie between 0.84 and 1.06. Typical, not confirmed. */
export const TYPICAL_DENSITY = { value: 0.95, halfWidth: 0.11 };
