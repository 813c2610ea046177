import * as z from 'zod/mini';
import { citedSchema, densitySchema, gradeSchema, searchOfLot, smellOnlyMark, standing } from './quantity';
import { amount, day, percent, purity, share } from './ranges';
import { envelope, everyOne, madeOf, type Kind } from './record';

/** What is known of a material beside its name. */
const facts = () => ({
  cas: z.optional(z.string()),
  fema: z.optional(z.string()),
  /** The plant that a natural material comes from, in Latin: some plants are banned whatever the CAS number. */
  botanical: z.optional(z.string()),
  /** The part of the plant, where the catalogue says it: bark and leaf of one plant bring different things. */
  part: z.optional(z.string()),
  sort: z.enum(['substance', 'natural']),
  /** Of an ingredient made of a plant or fruit, which is more than its flavour: its bottles say what else they hold. */
  preparation: z.optional(z.enum(['extract', 'tincture', 'infusion', 'juice', 'puree'])),
  /** At 20 °C. A solid is weighed, never counted in drops. */
  form: z.enum(['liquid', 'viscous', 'solid']),
  density: z.optional(densitySchema),
  /** Share of the material that is what its name says, g/g. */
  purity: z.optional(purity),
  /** The least share that it may be sold with as a flavouring, g/g, by the Union list; for bottles without a certificate. */
  soldAtLeast: z.optional(share),
  cautions: z.array(z.string()),
  /** Id in the catalogue that it was copied from. */
  catalogue: z.optional(z.string()),
  /** Chemical class, or for naturals citrus oil, slow oil, oil: tells how long it keeps. */
  family: z.optional(z.string()),
  /** Other names. */
  also: z.optional(z.array(z.string())),
  smells: z.optional(z.array(z.string())),
  /** °C. */
  melts: z.optional(citedSchema),
  /** °C, at atmospheric pressure. */
  boils: z.optional(citedSchema),
  /** Flash point, °C. */
  flash: z.optional(citedSchema),
  /** Water solubility near room temperature, mg/L. */
  water: z.optional(citedSchema),
  thresholds: z.optional(
    z.array(
      z.object({
        medium: z.string(),
        kind: z.string(),
        low: amount,
        high: amount,
        unit: z.string(),
        source: z.string(),
        /** Given by hand: those of the catalogue are beside it and are never changed. */
        own: z.optional(z.boolean()),
      }),
    ),
  ),
  notes: z.optional(z.array(z.string())),
});

const schema = z.lazy(() => z.object({ ...envelope('material'), name: z.string(), code: z.string(), ...facts() }));

/** What a new material takes over from the catalogue: each part may be missing. */
export const materialFacts = z.lazy(() => z.partial(z.object({ name: z.string(), ...facts() })));
export type MaterialFacts = z.output<typeof materialFacts>;

/** A neat aroma material: an oil, an aroma chemical. */
export const material = {
  kind: 'material',
  schema,
  upgrades: [],
  words: { one: 'Material', many: 'Materials' },
  shelf: null, // its bottles are there, and it is their heading
  descent: () => madeOf(),
  search: ({ cas = '', fema = '', also = [], family = '', smells = [] }) => [
    [`${cas} ${fema}`, 'number'],
    ...also.map((name) => [name, 'other'] as const),
    [[family, ...smells].join(' '), 'word'],
  ],
  label: false,
  edit: true,
  repeat: false,
  page: 'own',
} as const satisfies Kind<Material>;
export type Material = z.output<typeof schema>;

const bottleSchema = z.lazy(() =>
  z.object({
    ...envelope('bottle'),
    material: z.string(),
    supplier: z.string(),
    lot: z.string(),
    grade: gradeSchema,
    ...smellOnlyMark,
    received: z.optional(day),
    opened: z.optional(day),
    amountG: z.optional(amount),
    /** Standard uncertainty of it that the density brings, g, where its label says mL. */
    amountU: z.optional(amount),
    pricePerG: z.optional(amount),
    /** Certificate values of this lot; they override the material's. */
    density: z.optional(densitySchema),
    purity: z.optional(purity),
    /** Limited constituents as the certificate of this lot gives them, g/g; they beat every published range. */
    constituents: z.optional(z.array(z.object({ cas: z.string(), name: z.string(), share }))),
    /** What an extract, tincture, infusion, juice or puree holds: °Brix, mL of ethanol per mL, acid (as citric acid) and dry matter in g/g. */
    holds: z.optional(
      z.object({
        brix: z.optional(percent),
        abv: z.optional(share),
        acid: z.optional(share),
        solids: z.optional(share),
      }),
    ),
    /** Ids of the groups of foods in it that a label names; left out where no one has looked. */
    allergens: z.optional(z.array(z.string())),
    useBy: z.optional(day),
    ...standing,
  }),
);

/** A material as bought: supplier, lot, what the certificate says. */
export const bottle = {
  kind: 'bottle',
  schema: bottleSchema,
  upgrades: [],
  words: { one: 'Bottle', many: 'Bottles' },
  shelf: everyOne,
  descent: ({ material }) => madeOf(material),
  search: (bottle) => searchOfLot(bottle),
  label: true,
  edit: true,
  repeat: true,
  page: 'own',
} as const satisfies Kind<Bottle>;
export type Bottle = z.output<typeof bottleSchema>;
