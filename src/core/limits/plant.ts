/** A natural material as it is known: its plant in Latin, the part that was used, its name. Each may be missing. */
export interface Natural {
  readonly botanical?: string | undefined;
  readonly part?: string | undefined;
  readonly name?: string | undefined;
}

/** Which naturals a row speaks of. */
export interface PlantRow {
  /** Latin names, synonyms beside each other; a genus alone stands for all of its species. */
  readonly plants?: readonly string[];
  /** Where only these parts of the plant are meant, single words. */
  readonly parts?: readonly string[];
  /** Where the row counts only if the part is known: other parts of the plant are common food. */
  readonly partSaid?: true;
  /** Where only a product whose name holds this word is meant, in small letters. */
  readonly named?: string;
}

const PLURALS: Readonly<Record<string, string>> = { leaves: 'leaf', berries: 'berry', twigs: 'twig' };
const PARTS =
  'aril bark bean berry bud flower fruit herb kernel leaf mace peel petal rhizome root seed twig wood'.split(' ');

/**
 * True when a row speaks of this natural: a Latin name of the row begins the material's, word by word, whatever the hybrid
 * sign, the case and the author's name ("Mentha × piperita L." is "Mentha x piperita"; "Cinnamomum cassia" is not
 * "Cinnamomum verum"). A genus alone ("Artemisia spp.") may be any of its species, and a part that is not known may be any
 * part: the row then speaks of it (the strict side, our choice). The part comes from what is stored, else from the name.
 */
export function speaksOf(row: PlantRow, natural: Natural): boolean {
  const typed = latinWords(natural.botanical ?? '');
  if (typed.length === 0 || !row.plants?.some((plant) => begins(typed, latinWords(plant)))) return false;
  if (row.named !== undefined && !(natural.name ?? '').toLowerCase().includes(row.named)) return false;
  const parts = partsIn(natural.part ?? natural.name ?? '');
  if (!row.parts || parts.length === 0) return !row.partSaid;
  return parts.some((part) => row.parts!.includes(part));
}

/**
 * The rows that speak of a natural, by CAS number and by plant; `oil` are the CAS numbers of the material a row is about.
 * Where one number is given to several plants (8007-80-5 to cassia and to cinnamon bark) and some of its rows name the plant
 * of this material, only those count; where none does, number and name contradict each other and all of them count. Our choice.
 */
export function rowsAbout<Row extends PlantRow & { readonly oil: readonly string[] }>(
  rows: readonly Row[],
  natural: Natural & { readonly cas?: string | undefined },
): Row[] {
  const numbered = rows.filter((row) => row.oil.includes(natural.cas ?? ''));
  const told = numbered.some((row) => speaksOf(row, natural));
  return rows.filter((row) => speaksOf(row, natural) || (!told && numbered.includes(row)));
}

/** Small letters; hybrid signs, points and single letters (authors) gone; a genus with "sp." or "spp." becomes the genus. */
function latinWords(text: string): string[] {
  const words = text.toLowerCase().match(/[\p{L}-]+/gu) ?? [];
  return words.filter((word) => word.length > 1 && !['sp', 'spp'].includes(word));
}

function begins(typed: readonly string[], plant: readonly string[]): boolean {
  return plant.slice(0, typed.length === 1 ? 1 : plant.length).every((word, i) => word === typed[i]);
}

function partsIn(text: string): string[] {
  const words = text.toLowerCase().match(/\p{L}+/gu) ?? [];
  const single = words.map((word) => PLURALS[word] ?? word.replace(/s$/, ''));
  return PARTS.filter((part) => single.some((word) => word.endsWith(part)));
}
