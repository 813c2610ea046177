import { find, list, shelf } from '../../records/shelf';
import type { Batch } from '../../records/kind/batch';
import type { Tasting } from '../../records/kind/drink';
import type { Vial } from '../../records/kind/vial';
import type { PickItem } from '../../ui/controls/PickRows';
import { answer } from '../engine/answers';
import type { Field } from '../engine/fields';
import { isSmellOnly } from '../../workshop/drinkable/grade';
import { strengthText } from '../../workshop/thing/strengthText';
import type { RunState } from '../engine/fold';
import { fields } from './fields';
import { vialOfLadder } from './ladder';
import { methodOf, type Method } from './methods';
import { formatDay } from '../../ui/format';
import { asideOf, bottleNumber, bottleNumbers } from '../../workshop/made/bottles';
import { dosedTags, tagOf } from '../../workshop/thing/labelled';

export const ALL_SMELLED = 'One of them is smell only: all are smelled, none is tasted.';

const MOST_SAMPLES = 6;
const LETTERS = Array.from({ length: MOST_SAMPLES }, (_, i) => String.fromCharCode(65 + i));

/** One of the samples: its name as it is said, and the record of the Shelf that it is, if it was picked there. */
export interface Sample {
  readonly name: string;
  readonly from: string | null;
}

/** What the samples of a method are called in its questions, by place; that many can be compared. */
export function placesOf({ id }: Method): string[] {
  if (id === 'paired') return ['Sample with less', 'Sample with more'];
  if (id === 'threshold') return ['Plain (the drink alone)', 'What is in the other'];
  if (id === 'ranking' || id === 'hedonic') return LETTERS.map((letter) => `Sample ${letter}`);
  return ['Sample A', 'Sample B'];
}

/** The samples typed or picked so far, in order; places left empty are passed over. */
export function samplesTyped(run: RunState, method: Method): Sample[] {
  return placesOf(method).flatMap((_, i) => {
    const name = answer(run, fields.sample(i));
    return name === null ? [] : { name, from: answer(run, fields.from(i)) };
  });
}

/** The samples, in order; null until there are enough and no two are alike. */
export function samplesOfRun(run: RunState): Sample[] | null {
  const method = methodOf(run);
  return method && !sampleTrouble(run, method) ? samplesTyped(run, method) : null;
}

/** Why the samples will not do yet, or ''. */
export function sampleTrouble(run: RunState, method: Method): string {
  const names = samplesTyped(run, method).map(({ name }) => name);
  if (new Set(names).size < names.length) return 'Two samples have the same name.';
  if (names.length >= needed(method)) return '';
  return method.id === 'ranking' ? 'Ranking needs three samples or more.' : 'Two samples at least.';
}

/** The fields that ask for the samples of a method, with room for one more; under one from the Shelf stands which record it is. */
export function sampleFields(run: RunState, method: Method): Field<string>[] {
  const named = placesOf(method).findLastIndex((_, i) => answer(run, fields.sample(i)) !== null);
  return placesOf(method)
    .slice(0, Math.max(needed(method), named + 2))
    .map((title, i) => {
      const row = rowOf(answer(run, fields.from(i)) ?? undefined);
      const field = fields.sample(i, title, i >= needed(method));
      return row ? { ...field, help: `From the Shelf: ${row.name}, ${row.what}.` } : field;
    });
}

function needed({ id }: Method): number {
  return id === 'ranking' ? 3 : 2;
}

/** What can be picked from the Shelf: vials, trial vials among them, then batches with their bottles put aside, then drinks as tasted; newest first. */
export function pickable(): PickItem[] {
  return [...list('vial').map(ofVial), ...list('batch').flatMap(ofBatch), ...list('tasting').map(ofTasting)];
}

/** The row of what was picked, or undefined when it is nothing of the Shelf. */
function rowOf(id: string | undefined): PickItem | undefined {
  const [vial, tasting, batch] = [find('vial', id), find('tasting', id), find('batch', id && recordOfSample(id))];
  if (batch) return ofBatch(batch).find((row) => row.id === id);
  return vial ? ofVial(vial) : tasting && ofTasting(tasting);
}

/** Bottles put aside of one batch are told apart by what follows the id of the batch. */
const OF = '#';

/** Id of the record that a sample is, or is a bottle of. */
export function recordOfSample(id: string): string {
  return id.split(OF)[0]!;
}

/** A batch, and each lot of its bottles that was put aside. */
function ofBatch(batch: Batch): PickItem[] {
  const { id, name, madeOn } = batch;
  const row = { name, smellOnly: isSmellOnly(batch), code: tagOf(batch), what: `batch of ${formatDay(madeOn)}` };
  const aside = asideOf(batch).map(({ id: fact, from, to, where }) => ({
    ...row,
    id: `${id}${OF}${fact}`,
    code: bottleNumber(batch, from),
    what: `${bottleNumbers(batch, from, to)}, put aside ${where}, ${row.what}`,
  }));
  return [{ ...row, id }, ...aside];
}

function ofVial(vial: Vial): PickItem {
  const { id, name, solvent, contents } = vial;
  const trial = contents.length > 1 ? 'trial, ' : '';
  const what = `${trial}${strengthText(vial)}${solvent ? ` in ${solvent.name}` : ''}`;
  return { id, code: tagOf(vial), name, what, smellOnly: isSmellOnly(vial) };
}

function ofTasting(tasting: Tasting): PickItem {
  const { id, base, doses, made, glass, liking } = tasting;
  const codes = dosedTags(doses);
  const told = [`drink of ${formatDay(made)}`, glass ? `glass ${glass.code}` : '', liking ? `liked ${liking}` : ''];
  return {
    id,
    code: codes,
    name: `${base.name} + ${codes}`,
    what: told.filter(Boolean).join(', '),
    smellOnly: isSmellOnly(tasting),
  };
}

/** The sample that a record of the Shelf becomes: a vial goes by its code and strength, a drink by its name. */
export function sampleNamed({ code, name }: PickItem): string {
  return (name.endsWith(`+ ${code}`) ? name : code).slice(0, 40);
}

/** Whether a sample, or the vial of a ladder, is smell only, or was picked on the Shelf and is there no more: then all are smelled. */
export function areSmelled(run: RunState): boolean {
  const picked = LETTERS.flatMap((_, i) => answer(run, fields.from(i)) ?? []);
  const ladder = vialOfLadder(run);
  return [...picked.map(recordOfSample), ...(ladder ? [ladder.id] : [])].some((id) => {
    const record = shelf.records.value.get(id);
    return record === undefined || isSmellOnly(record);
  });
}
