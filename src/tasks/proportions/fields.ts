import * as z from 'zod/mini';
import { choice, given, optionalAmount, pick, shaped, whole, words, type Field } from '../engine/fields';

/** The most vials that are blended: with more, more blends are needed than a nose can tell apart. */
export const MOST_VIALS = 4;

/** The blends of a run, laid down when its card is left: neither the Shelf nor a later version of Minim changes them. */
const laid = z.object({
  /** What is blended: a drop of each, mg, with its standard uncertainty (one dropper, one doubt) and the spread of single drops. */
  vials: z.array(z.object({ id: z.string(), tag: z.string(), mg: z.number(), u: z.number(), dropper: z.string() })),
  bounds: z.array(z.object({ least: z.number(), most: z.number() })),
  total: z.number(),
  /** Drops of each vial, blend by blend, in the order of judging. */
  blends: z.array(z.object({ drops: z.array(z.number()), code: z.optional(z.number()) })),
});
export type Laid = z.output<typeof laid>;
export type LaidVial = Laid['vials'][number];

/** The questions of a search for proportions. */
export const fields = {
  vial: (i: number, optional = false): Field<string> => {
    const field = pick({ name: `vial.${i}`, title: `Vial ${i + 1}` });
    return optional ? { ...field, read: (text) => ({ ok: true, value: text }) } : field;
  },
  asked: choice({
    name: 'asked',
    title: 'What is judged',
    options: [
      { value: 'liking', label: 'How I like it', short: 'how I like it', hint: 'nine points' },
      {
        value: 'own',
        label: 'A question of my own',
        short: 'my own question',
        hint: 'how close to the idea? nine points',
      },
    ],
  }),
  idea: words({
    name: 'idea',
    title: 'The question',
    preset: 'How close to the idea?',
    max: 80,
  }),
  on: choice({
    name: 'on',
    title: 'Each blend',
    options: [
      { value: 'strip', label: 'On a fresh strip', short: 'on a strip', hint: 'all its drops on one strip' },
      {
        value: 'vial',
        label: 'In an empty vial',
        short: 'in an empty vial',
        hint: 'dip a strip into it, or smell the vial',
      },
    ],
  }),
  total: whole({
    name: 'total',
    title: 'Drops of a blend',
    unit: 'drops',
    min: 2,
    max: 60,
    help: 'About the same amount in each, so that one is not stronger than another.',
  }),
  ends: choice({
    name: 'ends',
    title: 'Vials alone',
    options: [
      { value: 'in', label: 'Judged too', short: 'vials alone too', hint: 'tells most about the surface' },
      { value: 'out', label: 'Left out', short: 'no vial alone', hint: 'none is more than 80 % of a blend' },
    ],
  }),
  /** The largest share of a vial that is allowed, %. */
  most: (vial: string, tag = '') =>
    optionalAmount({
      name: `most.${vial}`,
      title: `At most of ${tag}`,
      unit: '%',
      above: 0,
      max: 100,
      help: 'Empty: no limit.',
    }),
  /** The smallest share of a vial that is allowed, %. */
  least: (vial: string, tag = '') =>
    optionalAmount({
      name: `least.${vial}`,
      title: `At least of ${tag}`,
      unit: '%',
      above: 0,
      max: 90,
      help: 'Empty: it may be left out.',
    }),
  blind: choice({
    name: 'blind',
    title: 'Codes',
    options: [
      { value: 'no', label: 'No codes', short: 'not blind', hint: 'each blend is made and smelled at once' },
      {
        value: 'yes',
        label: 'Blind codes',
        short: 'blind',
        hint: 'all of a session are made first, under three digits, and mixed up',
      },
    ],
  }),
  session: whole({
    name: 'session',
    title: 'Blends a session',
    unit: 'blends',
    min: 3,
    max: 20,
    help: 'Then you can pause and continue another day. A tired nose tells blends apart less well (6 is our choice).',
  }),
  /** A search that this one goes on from, by the id of its record. */
  earlier: words({ name: 'earlier', title: 'Continued from' }),
  laid: shaped('laid', laid),
  /** The drops of a blend that was proposed. */
  proposed: (n: number) => shaped(`blend.${n}`, z.array(z.number())),
  /** The drops that a blend really got, where they are not those asked for. */
  had: (n: number, k: number, tag: string) => whole({ name: `had.${n}.${k}`, title: tag, unit: 'drops', max: 200 }),
  liking: (n: number) => whole({ name: `like.${n}`, title: 'Liking', unit: 'of 9', min: 1, max: 9 }),
  pad: given('pad', ['yes', 'no']),
  stop: given('stop', ['yes', 'no']),
};
