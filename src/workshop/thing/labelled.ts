import { computed } from '@preact/signals';
import { byKind, isOf, kindNames, kinds, type LabelledKind, type RecordOf } from '../../records/kind/kinds';
import type { Bottle } from '../../records/kind/material';
import type { Vial } from '../../records/kind/vial';
import { find, list, shelf } from '../../records/shelf';
import { leftOf } from '../../records/stock';
import { formatDay, formatDayOfYear, formatPlain } from '../../ui/format';

/** What can carry a label: it has a short id, and a code. */
export type Labelled = RecordOf<LabelledKind>;

/** All that can carry a label, in the order of the Shelf, newest first. */
export function allLabelled(): Labelled[] {
  return kindNames.flatMap((kind) => (isLabelledKind(kind) ? list(kind) : []));
}

function isLabelledKind(kind: keyof typeof kinds): kind is LabelledKind {
  return kinds[kind].label;
}

/** What a thing is called: the code that the person gave it, its strength in a few signs ('' where it has a code of its own), its name. */
export interface Called {
  readonly code: string;
  readonly strength: string;
  readonly name: string;
}

const UNDILUTED = { words: 'neat' };

const called: { readonly [K in LabelledKind]: (record: RecordOf<K>) => Called } = {
  vial: (vial) => ({ code: vial.code, strength: isDilution(vial) ? strengthWords(vial.label) : '', name: vial.name }),
  bottle: ({ material }) => {
    const { code = '', name = 'a material that is gone' } = find('material', material) ?? {};
    return { code, strength: UNDILUTED.words, name };
  },
  batch: ({ code = 'BATCH', name }) => ({ code, strength: '', name }),
};

/** Code, strength and name of a thing that can carry a label; a batch from before batches had numbers says what it is. */
export function calledOf(record: Labelled): Called {
  return byKind(called, record);
}

/** A dilution goes by its material and strength; a trial and a concentrate have a code of their own. */
function isDilution({ sort, contents }: Pick<Vial, 'sort' | 'contents'>): boolean {
  return sort === undefined ? contents.length === 1 : sort === 'dilution';
}

const DIGITS = 3; // of a strength on a tag, our choice: more do not tell two vials apart

/** '1 %', '0.05 %', '1 % w/w', '250 mg/kg': the usual basis of the bench, % w/v, is just %. */
export function strengthWords({ value, basis }: Vial['label']): string {
  return `${formatPlain(value, DIGITS)} ${basis === '% w/v' ? '%' : basis}`;
}

/** Share of neat material that a dilution's label says, g/g or g/mL, for the rings of its tenfold steps; a trial is of no one strength. */
export function labelShareOf(vial: Vial): number | undefined {
  const { value, basis } = vial.label;
  return isDilution(vial) ? value / (basis.startsWith('%') ? 100 : 1e6) : undefined;
}

/** 'CARD 1 %', 'CARD neat', 'T3', 'B2': code and strength, as they are written on the thing. */
export function labelTagOf(record: Labelled): string {
  const { code, strength } = calledOf(record);
  return [code, strength].filter(Boolean).join(' ');
}

/**
 * What a thing is called in an instruction, a list or aloud: its tag, and where another one in use has the same tag, what
 * tells them apart: the day of a vial or batch ('CARD 1 % of 5 May'), the lot of a bottle ('CARD neat, lot C-2208').
 */
export function tagOf(record: Labelled): string {
  const tag = labelTagOf(record);
  const { all, years } = alikeNow.value.get(keyOf(record))?.() ?? NONE;
  if (all.every(({ id }) => id === record.id)) return tag;
  if (isOf('bottle', record)) return record.lot ? `${tag}, lot ${record.lot}` : tag;
  const isOneYear = years.size === 1 && years.has(record.madeOn.slice(0, 4));
  return `${tag} of ${isOneYear ? formatDayOfYear(record.madeOn) : formatDay(record.madeOn)}`;
}

/** The same of a vial or bottle by its id; undefined when it is gone. */
export function tagOfId(id: string | undefined): string | undefined {
  const record = find('vial', id) ?? find('bottle', id);
  return record && tagOf(record);
}

/** The vials that drops of a drink came from: 'CARD 1 % + PGF 1 %'; one that is gone as it was called then. */
export function dosedTags(doses: readonly { readonly vial: string; readonly code: string }[]): string {
  return doses.map(({ vial, code }) => tagOfId(vial) ?? code).join(' + ');
}

/** Things in use of one tag, and the years that they were made in. */
interface Alike {
  readonly all: readonly Labelled[];
  readonly years: ReadonlySet<string>;
}
const NONE: Alike = { all: [], years: new Set() };

function alikeOf(all: readonly Labelled[]): Alike {
  return { all, years: new Set(all.map((one) => ('madeOn' in one ? one.madeOn.slice(0, 4) : ''))) };
}

/** Things in use by what they share with those of the same tag; who is in use is worked out when first asked for. */
const alikeNow = computed(() => {
  const groups = new Map<string, Labelled[]>();
  for (const record of shelf.records.value.values()) {
    if (!isLabelledKind(record.kind) || record.archived) continue;
    const key = keyOf(record as Labelled);
    if (!groups.has(key)) groups.set(key, []);
    groups.get(key)!.push(record as Labelled);
  }
  return new Map([...groups].map(([key, all]) => [key, once(() => alikeOf(all.filter(isInUse)))]));
});

function keyOf(record: Labelled): string {
  if (isOf('bottle', record)) return `bottle ${record.material}`;
  if (isOf('batch', record)) return `batch ${calledOf(record).code}`;
  return vialKey(record);
}

function vialKey({ code, ...vial }: Pick<Vial, 'code' | 'label' | 'sort' | 'contents'>): string {
  const { value, basis } = vial.label;
  return `vial ${code} ${isDilution(vial) ? `${value.toPrecision(DIGITS)} ${basis}` : ''}`;
}

/** Vials in use that a new dilution of this code, strength and day could not be told from. */
export function twinsOf(code: string, label: Vial['label'], madeOn: string): Labelled[] {
  const { all } = alikeNow.value.get(vialKey({ code, label, sort: 'dilution', contents: [] }))?.() ?? NONE;
  return all.filter((one) => 'madeOn' in one && one.madeOn === madeOn);
}

/** Whether something is left of it; one whose rest cannot be worked out counts, and takes no other with it. */
function isInUse(record: Labelled): boolean {
  if (isOf('batch', record)) return true;
  try {
    return leftOf(record as Bottle | Vial)?.value !== 0;
  } catch {
    return true;
  }
}

function once<T>(work: () => T): () => T {
  let done: { value: T } | undefined;
  return () => (done ??= { value: work() }).value;
}
