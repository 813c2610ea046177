import { exact, type Measured } from '../core/number/measured';
import { purityAtLeast } from '../core/liquid/strength';
import type { Bottle } from '../records/kind/material';
import { find, list, shelf } from '../records/shelf';
import type { SolventCopy } from '../records/kind/solvent';
import { leftOf } from '../records/stock';
import type { Supply } from '../records/kind/supply';
import type { Vial } from '../records/kind/vial';
import { formatPlain } from '../ui/format';
import { refusalOf } from './fitForDrinks';
import { labelTagOf, tagOf } from './labelled';
import { today } from './today';
import { useByOf } from './useBy';

const NEVER = 'smell only · never in a drink';

/** A bottle, or a vial of one material, that a material can be weighed from; or a bottle of solvent. */
export interface Source {
  readonly id: string;
  /** Code, supplier and lot, or code and strength of the vial. */
  readonly words: string;
  readonly more: string;
  readonly lot: string;
  /** g of the material per g of what is weighed. */
  readonly strength: Measured;
  /** Why it may not go into a drink, in one sentence; null when it may. */
  readonly refusal: string | null;
  /** True when it is past its day. */
  readonly past: boolean;
  /** g left as reckoned; null where the book does not know. */
  readonly leftG: number | null;
  readonly pricePerG: number | null;
  /** What the rest of a vial is. */
  readonly solvent: SolventCopy | null;
  readonly bottle: Bottle | null;
  readonly vial: Vial | null;
}

/** Sources by material, for a Shelf as it stands: all steps of a run ask for them. */
const known = new WeakMap<object, Map<string, Source[]>>();

/** What a material can be weighed from: bottles first, oldest first, then vials of nothing else; after those what is past its day, then the empty, the smell-only last. */
export function sourcesOf(material: string): Source[] {
  const records = shelf.records.value;
  if (!known.has(records)) known.set(records, new Map());
  const found = known.get(records)!;
  if (!found.has(material)) found.set(material, inOrder(material));
  return found.get(material)!;
}

function inOrder(material: string): Source[] {
  const bottles = list('bottle').filter((bottle) => bottle.material === material);
  const vials = list('vial').filter(({ contents }) => contents.length === 1 && contents[0]!.material === material);
  const rank = ({ refusal, leftG, past }: Source) => (refusal ? 3 : leftG === 0 ? 2 : past ? 1 : 0);
  return [...bottles.reverse().map(ofBottle), ...vials.map(ofVial)].sort((a, b) => rank(a) - rank(b));
}

function ofBottle(bottle: Bottle): Source {
  const material = find('material', bottle.material);
  const { id, supplier, lot, grade } = bottle;
  const purity = bottle.purity ?? material?.purity;
  const leftG = leftOf(bottle)?.value ?? null;
  const words = lotWords({ supplier, lot });
  const barred = grade === 'smell only';
  return {
    id,
    words: `${labelTagOf(bottle)}, ${words}`,
    lot: words,
    leftG,
    past: isPast(bottle),
    solvent: null,
    bottle,
    vial: null,
    pricePerG: bottle.pricePerG ?? null,
    more: barred ? NEVER : ['neat', ...moreOf(bottle, leftG)].join(', '),
    strength: purity === undefined ? exact(1) : purityAtLeast(purity * 100, `purity:${lot || id}`),
    refusal: barred ? refusalWords(material?.name ?? 'that material', words) : null,
  };
}

/** A bottle of solvent. */
export function sourceOfSolvent(supply: Supply): Source {
  const { id, name, grade } = supply;
  const words = lotWords(supply);
  const leftG = leftOf(supply)?.value ?? null;
  return {
    id,
    words,
    lot: words,
    leftG,
    past: isPast(supply),
    solvent: null,
    bottle: null,
    vial: null,
    pricePerG: null,
    more: '',
    strength: exact(1),
    refusal: grade === 'smell only' ? refusalWords(name, words) : null,
  };
}

function isPast(record: Bottle | Supply | Vial): boolean {
  const useBy = useByOf(record);
  return useBy !== null && useBy.day < today();
}

/** How much is left of it, and whether it is past its day. */
function moreOf(record: Bottle | Vial, leftG: number | null): string[] {
  return [...(leftG === null ? [] : [`${formatPlain(leftG, 3)} g left`]), ...(isPast(record) ? ['past its day'] : [])];
}

function lotWords({ supplier, lot }: { supplier: string; lot: string }): string {
  return [supplier, lot && `lot ${lot}`].filter(Boolean).join(', ') || 'a bottle without a lot';
}

function refusalWords(name: string, words: string): string {
  return `The bottle of ${name} (${words}) is not fit for drinks: smell only, it never goes into a drink.`;
}

function ofVial(vial: Vial): Source {
  const { id, label, solvent, supplier, lot } = vial;
  const refusal = refusalOf(vial);
  const leftG = leftOf(vial)?.value ?? null;
  const words = `vial ${tagOf(vial)}`;
  const strength = `${formatPlain(label.value)} ${label.basis}`;
  return {
    id,
    refusal,
    leftG,
    past: isPast(vial),
    solvent,
    bottle: null,
    vial,
    pricePerG: null,
    words,
    lot: [words, supplier, lot && `lot ${lot}`].filter(Boolean).join(', '),
    more: refusal ? NEVER : [strength, ...moreOf(vial, leftG ?? 0)].join(', '),
    strength: vial.contents[0]!.strength,
  };
}
