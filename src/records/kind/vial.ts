import * as z from 'zod/mini';
import { exact } from '../../core/number/measured';
import { shortIdOf } from './shortId';
import { gradeSchema, measuredIn, partOf, smellOnlyMark, standing, useSchema } from './quantity';
import { amount, day, dayOrNone, gPerMl, share } from './ranges';
import { envelope, everyOne, type Kind, type Part } from './record';
import { solventCopy } from './solvent';

const schema = z.lazy(() =>
  z.object({
    ...envelope('vial'),
    /** Of a dilution that of its material, unless another was typed; its strength follows it. */
    code: z.string(),
    /** A trial and a concentrate have codes of their own, without a strength. Vials of the first version do not say. */
    sort: z.optional(z.enum(['dilution', 'trial', 'concentrate'])),
    name: z.string(),
    /** What it holds: one material for a dilution, several for a trial. Strength in g of neat material per g of the vial's liquid. */
    contents: z.array(z.object({ material: z.string(), name: z.string(), strength: measuredIn(share) })),
    /** The strength that was asked for, as it stands on the label. */
    label: z.object({ value: amount, basis: z.string() }),
    solvent: z.nullable(solventCopy),
    /** What else its liquid holds that rules count in a drink: weighting agent and gum of an emulsion, g per g of it. */
    beside: z.optional(z.array(z.object({ id: z.string(), name: z.string(), cas: z.string(), share }))),
    /** Mass of the liquid as made, g. */
    massG: measuredIn(amount),
    densityGPerMl: gPerMl,
    sizeMl: amount,
    /** How it is closed; one that does not say is taken for a dropper cap, which loses more. */
    cap: z.optional(z.enum(['lined cap', 'dropper cap'])),
    grade: gradeSchema,
    ...smellOnlyMark,
    madeOn: day,
    /** From the end of its run until its label is printed or written; vials of older versions do not say. */
    unlabelled: z.optional(z.literal(true)),
    useBy: dayOrNone,
    supplier: z.string(),
    lot: z.string(),
    uses: z.array(useSchema),
    ...standing,
  }),
);

/** A dilution, or a counted trial, as it was really made. */
export const vial = {
  kind: 'vial',
  schema,
  upgrades: [],
  words: { one: 'Vial', many: 'Vials' },
  shelf: everyOne,
  descent: (vial) => ({ isIn: partsOfVial(vial), ledTo: [] }),
  search: ({ id, lot, contents, supplier, box = '', solvent }) => [
    [`${lot} ${shortIdOf(id)}`, 'number'],
    [contents.map(({ name }) => name).join(' '), 'other'],
    [`${supplier} ${box} ${solvent?.name ?? ''}`, 'word'],
  ],
  label: true,
  edit: true,
  repeat: true,
  page: 'own',
} as const satisfies Kind<Vial>;
export type Vial = z.output<typeof schema>;

/** What it took by name, and the rest of it: its solvent, where no bottle of that was named. */
function partsOfVial({ uses, solvent, massG }: Vial): Part[] {
  const named = uses.filter(({ id }) => id !== solvent?.id).map(partOf);
  const rest = restOf({ uses, solvent, massG });
  return solvent && rest > 0 ? [...named, { id: solvent.id, grams: exact(rest) }] : named;
}

/** Grams of a vial that came from no bottle it names: its solvent. What is only rounding counts as none. */
export function restOf({ uses, solvent, massG }: Pick<Vial, 'uses' | 'solvent' | 'massG'>): number {
  const named = uses.reduce((sum, use) => (use.id === solvent?.id ? sum : sum + use.massG), 0);
  return massG.value - named > 1e-9 * massG.value ? massG.value - named : 0;
}
