import * as z from 'zod/mini';
import { exact, plus, scaled } from '../../core/number/measured';
import { measuredIn, smellOnlyMark, useSchema } from './quantity';
import { amount, celsius, day, figure, gPerMl, percent, share, some, whole } from './ranges';
import { envelope, type Kind, type Part } from './record';
import { sinceSchema } from './since';

/** One thing that went in: where, what, from which bottle or vial, planned and really weighed, g. */
const weighed = z.object({
  /** The vessel it went into. */
  into: z.enum(['concentrate', 'syrup', 'drink']),
  id: z.string(),
  name: z.string(),
  /** Id of the bottle or vial; null for what the Shelf does not know (sugar, water). */
  source: z.nullable(z.string()),
  /** Supplier and lot as they stood on the bottle. */
  lot: z.string(),
  plannedG: amount,
  massG: measuredIn(amount),
  /** Of what was diluted to be weighed: g of the material's goods in one g. */
  share: z.optional(share),
  /** An ingredient of the drink, no part of the formula. */
  own: z.optional(z.literal(true)),
  /** Of such an ingredient: g of its acid, as anhydrous citric acid, in one g as it was weighed. */
  acid: z.optional(z.number()),
  /** Added after the drink was measured, to correct it. */
  corrects: z.optional(z.literal(true)),
});
export type Weighed = z.output<typeof weighed>;

const keeping = z.object({
  phMeasured: z.optional(z.number()),
  phComputed: z.optional(z.number()),
  acidGPerL: z.optional(z.number()),
  said: z.array(
    z.object({ state: z.enum(['danger', 'outside', 'inside', 'said']), words: z.string(), source: z.string() }),
  ),
  bestBefore: z.optional(z.string()),
  why: z.optional(z.string()),
});

const schema = z.lazy(() =>
  z.object({
    ...envelope('batch'),
    name: z.string(),
    /** B1, B2, …; those of the first version have none. */
    code: z.optional(z.string()),
    /** The formula or tasting that it was made from, with name and version. */
    formula: z.object({ id: z.string(), name: z.string(), version: z.nullable(whole) }),
    /** Shares of neat material as asked for, g/g. */
    lines: z.array(z.object({ material: z.string(), name: z.string(), share: amount })),
    /** What was answered when it was planned: to make it again. */
    asked: z.record(z.string(), z.string()),
    weighed: z.array(weighed),
    /** The drink as it became: L, °Brix, % ABV, g/mL. */
    drink: z.object({
      litres: measuredIn(some),
      brix: measuredIn(percent),
      abv: measuredIn(percent),
      /** The alcohol of a solvent in it was not known: `abv` is then without that. */
      abvUnknown: z.optional(z.literal(true)),
      densityGPerMl: measuredIn(gPerMl),
      emulsion: z.boolean(),
      /** Volumes of CO2, and bar on the gauge at °C, where it is carbonated. */
      gas: z.optional(z.object({ volumes: amount, gaugeBar: figure, atC: celsius })),
    }),
    reached: z.array(
      z.object({ material: z.string(), name: z.string(), mgPerKg: measuredIn(amount), mgPerL: measuredIn(amount) }),
    ),
    /** What the rules said on the day: state and words, with the source of each figure. */
    checks: z.array(z.object({ state: z.string(), what: z.string(), words: z.string(), source: z.string() })),
    jurisdiction: z.string(),
    /** Why it was made although it is over a limit. */
    although: z.optional(z.string()),
    /** How sour it is (pH, and g/L as citric acid, from what was weighed), what was said of its keeping, and the day that was set, with its reason. */
    keeping: z.optional(keeping),
    madeOn: day,
    notes: z.string(),
    /** Grams taken out of each bottle and vial, what was lost included. */
    uses: z.array(useSchema),
    /** Of these, the grams that did not get into the drink, and why. */
    lost: z.optional(z.array(z.object({ id: z.string(), massG: amount, why: z.string() }))),
    /** What was measured, corrected, filled, put aside and tried since it was made. */
    since: z.optional(z.array(sinceSchema)),
    ...smellOnlyMark,
  }),
);

/** A batch as it was really made: from formula to drink, traceable to lots. */
export const batch = {
  kind: 'batch',
  schema,
  upgrades: [],
  words: { one: 'Batch', many: 'Batches' },
  shelf: null, // what was done is in the Book
  descent: (batch) => ({ isIn: partsOfBatch(batch), ledTo: [batch.formula.id] }),
  search: () => [],
  label: true,
  edit: false,
  repeat: true,
  page: 'own',
} as const satisfies Kind<Batch>;
export type Batch = z.output<typeof schema>;

/** What is in the drink: what was taken less what was lost, as well known as what was weighed of it. */
function partsOfBatch({ uses, lost = [], weighed }: Batch): Part[] {
  return uses.flatMap(({ id, massG }) => {
    const grams = massG - lost.reduce((sum, one) => sum + (one.id === id ? one.massG : 0), 0);
    if (massG > 0 && grams < 1e-9 * massG) return []; // all of it was lost: it is not in the drink
    const onScale = plus(...weighed.flatMap((one) => (one.source === id ? one.massG : [])));
    return {
      id,
      grams: onScale.value > 0 ? { ...scaled(onScale, grams / onScale.value), value: grams } : exact(grams),
    };
  });
}
