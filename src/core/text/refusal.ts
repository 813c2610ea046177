/**
 * A number in a sentence: as it was given, or rounded to at most `digits` significant ones, to exactly `figures` of them
 * (zeros at the end are kept), or to `decimals`.
 */
export type Amount =
  | number
  | { readonly value: number; readonly digits: number }
  | { readonly value: number; readonly figures: number }
  | { readonly value: number; readonly decimals: number };

/** A thing in a sentence, by its id; `name` is what core knows it by. Where it is shown, the person's own name goes in. */
export interface Named {
  readonly id: string;
  readonly name?: string | undefined;
}

/** What fills a hole of a sentence; a text is words already. */
export type Filling = Amount | Named | string;

/** The names of the holes in a sentence: 'least' and 'most' in '{least} to {most} g'. */
type Holes<What extends string> = What extends `${string}{${infer Hole}}${infer Rest}` ? Hole | Holes<Rest> : never;

/** What fills a sentence: exactly its holes, and nothing where it has none. */
export type Fillings<What extends string> = [Holes<What>] extends [never]
  ? []
  : [data: { readonly [Hole in Holes<What>]: Filling }];

/** A sentence with named holes, and what fills them. The decimal sign and the names are put in where it is shown. */
export interface Sentence {
  readonly what: string;
  readonly data: Readonly<Record<string, Filling>>;
}

/** A sentence and what fills its holes: each of them, and nothing else. Numbers in the unit that the sentence names. By definition. */
export function sentence<What extends string>(what: What, ...[data]: Fillings<What>): Sentence {
  return { what, data: data ?? {} };
}

/**
 * What cannot be done, for the person to read: thrown where a number lies outside of what a formula is good for, or something
 * that is needed is missing. Anything else that is thrown is a fault of the program. Its message is for logs and tests.
 */
export class Refusal<What extends string = string> extends Error implements Sentence {
  override readonly name = 'Refusal';
  readonly what: string;
  readonly data: Sentence['data'];

  constructor(what: What, ...data: Fillings<What>) {
    const said = sentence(what, ...data);
    super(plainly(said));
    this.what = said.what;
    this.data = said.data;
  }
}

/** A sentence with its holes filled by `write`; a hole that nothing fills stays as it is. By definition. */
export function filled({ what, data }: Sentence, write: (filling: Filling) => string): string {
  return what.replace(/\{(\w+)\}/g, (hole, name: string) => (Object.hasOwn(data, name) ? write(data[name]!) : hole));
}

/** A sentence with its numbers as they are, with a point, and names as core knows them: for logs and tests. By definition. */
export function plainly(said: Sentence): string {
  return filled(said, plain);
}

function plain(filling: Filling): string {
  if (typeof filling !== 'object') return String(filling);
  if ('id' in filling) return filling.name ?? filling.id;
  const { value } = filling;
  if ('digits' in filling) return String(Number(value.toPrecision(filling.digits)));
  return 'figures' in filling ? value.toPrecision(filling.figures) : value.toFixed(filling.decimals);
}
