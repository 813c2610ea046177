import { placesOf, type Range } from '../../core/liquid/places';
import { find } from '../../records/shelf';

/** What the units of thresholds are in mg/kg of water; a litre counts as a kilogram. */
const IN_WATER: Readonly<Record<string, number>> = { 'µg/kg': 1e-3, 'mg/kg': 1, 'µg/L': 1e-3, 'mg/L': 1 };

/** The lowest and the highest threshold in water that is known of a material, mg/kg; null where none is. */
export function thresholdInWater(material: string): Range | null {
  const known = (find('material', material)?.thresholds ?? []).flatMap(({ medium, low, high, unit }) => {
    const factor = IN_WATER[unit];
    return medium.trim().toLowerCase() === 'water' && factor !== undefined
      ? [[low * factor, high * factor] as const]
      : [];
  });
  if (known.length === 0) return null;
  return { low: Math.min(...known.map(([low]) => low)), high: Math.max(...known.map(([, high]) => high)) };
}

/** A line of a formula by its dose over its threshold in water: the places it may have, 1 the strongest, and that ratio; null where no threshold is known. */
export interface OdourActivity {
  readonly material: string;
  readonly name: string;
  readonly times: Range | null;
  readonly places: { readonly from: number; readonly to: number } | null;
}

/**
 * Dose over threshold of each line, strongest first: an order, with the places that published thresholds leave open. Not a strength: sugar,
 * acid, alcohol and the other smells change it, and how fast smell grows with dose differs (Audouin et al. 2001, from memory).
 */
export function odourActivities(
  lines: readonly { material: string; name: string; mgPerKg: number }[],
): OdourActivity[] {
  const all = lines.map(({ material, name, mgPerKg }) => {
    const threshold = thresholdInWater(material);
    const times =
      threshold && threshold.low > 0 ? { low: mgPerKg / threshold.high, high: mgPerKg / threshold.low } : null;
    return { material, name, times };
  });
  const known = all.flatMap((one) => (one.times ? [{ ...one, times: one.times }] : []));
  const places = placesOf(known.map(({ times }) => ({ low: -times.high, high: -times.low })));
  const told = known
    .map((one, i) => ({ ...one, places: places[i]! }))
    .sort((a, b) => a.places.from - b.places.from || a.places.to - b.places.to);
  const open = all.filter(({ times }) => times === null);
  return [...told, ...open.map((one) => ({ ...one, places: null }))];
}

/** How many times the parts of one a material in its place needs to be as far above its threshold; null where one of both is not known. */
export function partsForSwap(before: string, after: string): Range | null {
  const [then, now] = [thresholdInWater(before), thresholdInWater(after)];
  return then && now && then.low > 0 ? { low: now.low / then.high, high: now.high / then.low } : null;
}
