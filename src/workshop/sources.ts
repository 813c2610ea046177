import { exact, type Measured } from '../core/number/measured';
import type { Bottle } from '../records/kind/material';
import { find, list, shelf } from '../records/shelf';
import type { SolventCopy } from '../records/kind/solvent';
import { leftOf, type Stocked } from '../records/stock';
import type { Supply } from '../records/kind/supply';
import type { Vial } from '../records/kind/vial';
import { leftPhrase } from '../ui/left';
import { isSmellOnly, labelSays, refusalOf } from './drinkable/grade';
import { labelTagOf, tagOf } from './thing/labelled';
import { strengthText } from './thing/strengthText';
import { whyNotByItself } from './takenByItself';
import { contentsNow } from './thing/ageing';
import { purityOf } from './thing/purity';
import { today } from './today';

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
  /** g left as reckoned; null where the book does not know. */
  readonly leftG: number | null;
  readonly pricePerG: number | null;
  /** What the rest of a vial is. */
  readonly solvent: SolventCopy | null;
  readonly bottle: Bottle | null;
  readonly vial: Vial | null;
  /** The bottle, vial or pack itself. */
  readonly stocked: Stocked;
}

/** Why a source is not taken by itself for a drink that needs that many g of it; null when it may be. */
export function whyNotNow(source: Source, grams: number | null = null): string | null {
  return whyNotByItself(source.stocked, { refusal: source.refusal, grams });
}

/** The first source that may be taken by itself for a drink: never past its date, empty, with less than that many g, or smell only. */
export function sourceByItself(material: string, gramsOf: (source: Source) => number | null): Source | null {
  const isFit = (one: Source) => whyNotNow(one, gramsOf(one)) === null;
  return sourcesOf(material).find(isFit) ?? null;
}

/** Sources by day and material, for a Shelf as it stands: all steps of a run ask for them. */
const known = new WeakMap<object, Map<string, Source[]>>();

/** What a material can be weighed from: bottles first, oldest first, then vials of nothing else; after those the empty and what is past its date, the smell-only last. */
export function sourcesOf(material: string): Source[] {
  const records = shelf.records.value;
  if (!known.has(records)) known.set(records, new Map());
  const found = known.get(records)!;
  const key = `${today()} ${material}`; // the order depends on the day
  if (!found.has(key)) found.set(key, inOrder(material));
  return found.get(key)!;
}

function inOrder(material: string): Source[] {
  const bottles = list('bottle').filter((bottle) => bottle.material === material);
  const vials = list('vial').filter(({ contents }) => contents.length === 1 && contents[0]!.material === material);
  const rank = ({ refusal, stocked }: Source) => (refusal ? 2 : whyNotByItself(stocked) ? 1 : 0);
  return [...bottles.reverse().map(ofBottle), ...vials.map(ofVial)].sort((a, b) => rank(a) - rank(b));
}

function ofBottle(bottle: Bottle): Source {
  const material = find('material', bottle.material);
  const { id, supplier, lot } = bottle;
  const leftG = leftOf(bottle)?.value ?? null;
  const words = lotWords({ supplier, lot });
  const barred = isSmellOnly(bottle);
  return {
    id,
    words: `${labelTagOf(bottle)}, ${words}`,
    lot: words,
    leftG,
    solvent: null,
    bottle,
    vial: null,
    stocked: bottle,
    pricePerG: bottle.pricePerG ?? null,
    more: barred ? NEVER : moreOf(bottle, ['neat', ...leftWords(bottle)]),
    strength: purityOf(bottle, material),
    refusal: barred ? refusalWords(material?.name ?? 'that material', words) : null,
  };
}

/** A bottle of solvent. One whose label no one has read has no refusal: who takes it asks. */
export function sourceOfSolvent(supply: Supply): Source {
  const { id, name } = supply;
  const words = lotWords(supply);
  const leftG = leftOf(supply)?.value ?? null;
  return {
    id,
    words,
    lot: words,
    leftG,
    solvent: null,
    bottle: null,
    vial: null,
    stocked: supply,
    pricePerG: null,
    more: '',
    strength: exact(1),
    refusal: labelSays(supply) === 'smell only' ? refusalWords(name, words) : null,
  };
}

const NEVER = 'smell only · never in a drink';

/** What is left of it, where that is known. */
function leftWords(record: Bottle | Vial): string[] {
  const left = leftOf(record);
  return left ? [leftPhrase(left, 'g')] : [];
}

/** What it is and what is left, and why it is not taken by itself. */
function moreOf(record: Stocked, words: readonly string[]): string {
  const why = whyNotByItself(record);
  return why === null ? words.join(', ') : `${words.join(', ')} · ${why}`;
}

function lotWords({ supplier, lot }: { supplier: string; lot: string }): string {
  return [supplier, lot && `lot ${lot}`].filter(Boolean).join(', ') || 'a bottle without a lot';
}

function refusalWords(name: string, words: string): string {
  return `The bottle of ${name} (${words}) is not fit for drinks: smell only, it never goes into a drink.`;
}

function ofVial(vial: Vial): Source {
  const { id, solvent, supplier, lot } = vial;
  const refusal = refusalOf(vial);
  const words = `vial ${tagOf(vial)}`;
  return {
    id,
    refusal,
    leftG: leftOf(vial)?.value ?? null,
    solvent,
    bottle: null,
    vial,
    stocked: vial,
    pricePerG: null,
    words,
    lot: [words, supplier, lot && `lot ${lot}`].filter(Boolean).join(', '),
    more: refusal ? NEVER : moreOf(vial, [strengthText(vial), ...leftWords(vial)]),
    strength: contentsNow(vial)[0]!.strength,
  };
}
