import type { Level } from '../../core/limits/figure';

/**
 * Agents that make an oil phase heavier. Densities g/mL at 20 °C; "memory": typical, not confirmed.
 * Their highest amounts stand in the limit tables under the same CAS. Brominated oil is banned and is not offered.
 */
export interface WeightingAgent {
  readonly name: string;
  readonly cas: readonly string[];
  readonly low: number; // g/mL
  readonly high: number; // g/mL
  readonly source: string;
  readonly level: Level;
  /** Share of a soybean oil phase that matched water when measured, g/g (Chanamai and McClements, J Agric Food Chem 48, 2000, 5561–5565). */
  readonly matchedSoybean: number | null;
}

/** All agents. */
export const weightingAgents: readonly WeightingAgent[] = [
  { name: 'ester gum (glycerol ester of wood rosin, E 445)', cas: ['8050-30-4', '8050-31-5'], low: 1.08, high: 1.09, source: 'trade data page', level: 'secondary', matchedSoybean: 0.55 },
  { name: 'sucrose acetate isobutyrate (E 444)', cas: ['126-13-6'], low: 1.146, high: 1.146, source: 'typical, not confirmed', level: 'memory', matchedSoybean: 0.45 },
  { name: 'damar gum', cas: ['9000-16-2'], low: 1.06, high: 1.06, source: 'typical, not confirmed', level: 'memory', matchedSoybean: 0.55 },
];
