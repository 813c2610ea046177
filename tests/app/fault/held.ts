import { drawEverything, restored } from './drawn';
import { fileOf, mutantsOf, type Content } from './mutants';
import type { Element } from './pageInMemory';

/** How many backups with something wrong in them were looked at, how many of those were restored, and what went wrong then. */
export interface Held {
  readonly tried: number;
  readonly restored: number;
  /** Records and steps that were kept as they are, in all of them. */
  readonly asStored: number;
  readonly wrong: readonly string[];
}

interface Asked {
  readonly root: Element;
  readonly whole: Content;
  readonly count: number;
  readonly seed: number;
  /** Draws only the pages of what was changed, with the Shelf and the Book. */
  readonly only?: 'changed';
  readonly progress?: (done: number, wrong: readonly string[]) => void;
}

const IDS = /[0-9a-f]{8}-[0-9a-f-]{27}/g;

/** Restores mutants of a backup one after the other and draws what each leaves; what goes wrong is told once, with what was done. */
export async function heldAgainst({ root, whole, count, seed, only, progress }: Asked): Promise<Held> {
  const { shelf } = await import('../../../src/records/shelf');
  const next = mutantsOf(whole, seed);
  const wrong = new Map<string, string>();
  let [restoredCount, asStored] = [0, 0];
  for (let i = 0; i < count; i++) {
    const { content, deeds, changed } = next();
    const by = `mutant ${i} of seed ${seed}: ${deeds.join('; ')}`;
    const why = await restored(fileOf(content)).catch((error: Error) => `threw ${error.stack ?? error.message}`);
    if (why.startsWith('threw')) wrong.set(why, by);
    if (why !== '') continue;
    restoredCount++;
    for (const { page, what } of await drawEverything(root, only && changed)) {
      const sign = what.replace(IDS, 'ID');
      if (!wrong.has(sign)) wrong.set(sign, `${page.replace(IDS, 'ID')}, ${by}`);
    }
    asStored += shelf.unreadable.value.length;
    progress?.(i + 1, told(wrong));
  }
  return { tried: count, restored: restoredCount, asStored, wrong: told(wrong) };
}

function told(wrong: ReadonlyMap<string, string>): string[] {
  return [...wrong].map(([what, by]) => `${what} — ${by}`);
}
