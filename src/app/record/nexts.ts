import { isOf, type AnyRecord, type KindName, type RecordOf } from '../../records/kind/kinds';
import type { Offer, Task } from '../../tasks/engine/task';
import { dropsWords } from '../../tasks/proportions/blends';
import { canBeMadeAgain } from '../../tasks/shared/repeat';
import { tagOfId } from '../../workshop/thing/labelled';

/** Something that can be done next with a thing. */
export interface Next {
  readonly words: string;
  /** The task that it begins, or the page that it opens. */
  readonly start?: NonNullable<Offer['start']>;
  readonly to?: readonly string[];
}

/** The steps on the page of a thing: the first is the green one. `smellOnly`: whether it may not go into a drink now. */
export function nextsOf(record: AnyRecord, smellOnly: boolean, task?: Task | null): Next[] {
  const of = table[record.kind] as ((record: AnyRecord, smellOnly: boolean) => Next[]) | undefined;
  const own = of?.(record, smellOnly) ?? [];
  if (!isRepeated(record, task)) return own;
  return own.length > MOST ? own : [...own.slice(0, 2), again(record), ...own.slice(2)];
}

const MOST = 3; // with a fourth one "Make exactly this" is beside how it was made

/** "Make exactly this", where the foot of the page has no room for it. */
export function againOf(record: AnyRecord, smellOnly: boolean): Next | null {
  const own = nextsOf(record, smellOnly);
  return isRepeated(record) && own.length > MOST && !own.some(({ words }) => words === AGAIN) ? again(record) : null;
}

const AGAIN = 'Make exactly this';

function again({ id }: AnyRecord): Next {
  return { words: AGAIN, to: ['record', id, 'again'] };
}

/** Whether it was bought: then nothing made it, and nothing makes it again. */
export function isBought(record: AnyRecord): boolean {
  if (isOf('run', record)) return BOUGHT.tasks.includes(record.task);
  return BOUGHT.kinds.includes(record.kind);
}

const BOUGHT: { readonly kinds: readonly KindName[]; readonly tasks: readonly string[] } = {
  kinds: ['bottle', 'supply', 'material'],
  tasks: ['bottle', 'supply', 'certificate'],
};

/** Whether "Make exactly this" is offered; a calibration is weighed again from a button of its own. */
function isRepeated(record: AnyRecord, task?: Task | null): boolean {
  return !isBought(record) && !isOf('calibration', record) && canBeMadeAgain(record, task);
}

const table: {
  readonly [K in KindName]?: { of(record: RecordOf<K>, smellOnly: boolean): Next[] }['of'];
} = {
  vial: (vial, smellOnly) => {
    const smell = begin('Smell it', 'layer', { [`pick.${vial.id}`]: 'yes' });
    const dose = begin('Dose it', 'dose', { vial: vial.id });
    if (vial.contents.length > 1) return smellOnly ? [smell, label(vial)] : [dose, label(vial), smell];
    return [label(vial), smell, ...(smellOnly ? [] : [dose]), begin('Next vial', 'dilute', {})];
  },
  bottle: (bottle) => [
    begin('Dilute it', 'dilute', { bottle: bottle.id }),
    label(bottle),
    page('What is left', bottle, 'weigh'),
  ],
  supply: (supply) => [page(supply.unit === 'pieces' ? 'Count what is left' : 'Weigh what is left', supply, 'weigh')],
  dropper: (dropper) => [begin('Calibrate it', 'calibrate', { dropper: dropper.id })],
  calibration: ({ dropper }) => [begin('Weigh it again', 'calibrate', { dropper }), open('Its dropper', dropper)],
  formula: ({ id }) => [
    begin('Count drops', 'count', { formula: id }),
    begin('Make a batch', 'batch', { what: id }),
    { words: 'Versions and cost', to: ['formula', id] },
  ],
  layering: (layering) => [
    begin('Take it to a formula', 'formula', { from: layering.id, of: layering.id }),
    ...proportionsOf(stayed(layering)),
    {
      words: 'Print strip labels',
      to: ['labels', layering.strips.map(({ vial }) => vial).join(','), 'strips'],
    },
  ],
  proportions: (search) => [
    begin('Take it to a formula', 'formula', { from: search.id, of: search.id }),
    begin('Count it into a vial', 'count', countedBlend(search)),
    ...(search.runnerUp ? [begin('Test it blind', 'blind', againstRunnerUp(search))] : []),
    begin('Smell more blends', 'proportions', { ...vialsTyped(search.vials.map(({ id }) => id)), earlier: search.id }),
  ],
  tasting: ({ id }) => [begin('Make a batch', 'batch', { what: id })],
  batch: (batch) => [
    label(batch),
    { words: 'Sheet to print', to: ['sheet', batch.id] },
    { words: 'What its label says', to: ['sheet', batch.id, 'label'] },
  ],
  test: (test) => [begin('Next nose, same test', 'blind', sameTest(test)), begin('Another blind test', 'blind', {})],
  material: ({ id, name }) => [begin('Add a bottle', 'bottle', { 'new.name': name, 'new.material': id })],
  run: ({ kept }) => kept.slice(0, 1).map((id) => open('Open what was made', id)),
};

/** The search for proportions of some vials, where they are as many as can be blended. */
function proportionsOf(vials: readonly string[]): Next[] {
  const right = vials.length >= 2 && vials.length <= MOST_BLENDED;
  return right ? [begin('Find the proportions', 'proportions', vialsTyped(vials))] : [];
}

const MOST_BLENDED = 4;

function vialsTyped(vials: readonly string[]): Record<string, string> {
  return Object.fromEntries(vials.map((id, i) => [`vial.${i}`, id]));
}

/** The drops of the best blend, counted by hand into a vial of its own: from there it is dosed. */
function countedBlend({ vials, best }: RecordOf<'proportions'>): Record<string, string> {
  const used = vials.flatMap(({ id }, i) => (best.drops[i]! > 0 ? [{ id, drops: best.drops[i]! }] : []));
  const planned = Object.fromEntries(used.map(({ id, drops }) => [`plan.${id}`, String(drops)]));
  return { formula: 'hand', vials: used.map(({ id }) => id).join(' '), ...planned };
}

/** The best blend against the one after it: which is liked better? */
function againstRunnerUp({ vials, best, runnerUp }: RecordOf<'proportions'>): Record<string, string> {
  const tags = vials.map(({ id, code }) => ({ tag: tagOfId(id) ?? code }));
  const name = (drops: readonly number[]) => dropsWords(drops, tags).replaceAll('\u00a0', ' ').slice(0, MOST_LETTERS);
  return { test: 'preference', 'sample.0': name(best.drops), 'sample.1': name(runnerUp!.drops) };
}

/** The same test for another nose. */
function sameTest({
  test,
  samples,
  sources = [],
  attribute,
  served,
  sets,
  steps,
}: RecordOf<'test'>): Record<string, string> {
  const named = samples.map((name, i) => [`sample.${i}`, name]);
  const picked = sources.flatMap((id, i) => (id === null ? [] : [[`from.${i}`, id]]));
  return {
    test,
    served,
    tries: String(steps ? sets.length / steps.length : sets.length),
    ...(attribute === undefined ? {} : { attribute }),
    ...Object.fromEntries([...named, ...picked]),
  };
}

const MOST_LETTERS = 40; // of the name of a sample

function begin(words: string, task: string, typed: Readonly<Record<string, string>>): Next {
  return { words, start: { task, typed } };
}

function open(words: string, id: string): Next {
  return { words, to: ['record', id] };
}

function page(words: string, { id }: AnyRecord, name: string): Next {
  return { words, to: ['record', id, name] };
}

function label({ id }: AnyRecord): Next {
  return { words: 'Print label', to: ['labels', id] };
}

/** Vials that the verdict is about; without one, the strips that were not taken out. */
function stayed({ strips, verdict }: RecordOf<'layering'>): string[] {
  return verdict.vials ?? strips.filter(({ takenOutAt }) => takenOutAt === null).map(({ vial }) => vial);
}

/** What is rarely done with a thing: it is behind ⋯. */
export function rareOf(record: AnyRecord): Next[] {
  const entry = 'catalogue' in record ? record.catalogue : undefined;
  return [
    ...(isOf('layering', record)
      ? [begin('Layer these again', 'layer', Object.fromEntries(stayed(record).map((id) => [`pick.${id}`, 'yes'])))]
      : []),
    ...(isOf('vial', record) ? [begin('Dilute further', 'dilute', { bottle: record.id })] : []),
    ...(isOf('vial', record) && record.contents.length > 1
      ? [begin('Write its formula', 'formula', { from: record.id, of: record.id })]
      : []),
    ...(isOf('bottle', record) ? [begin('What the certificate says', 'certificate', { bottle: record.id })] : []),
    ...(entry ? [{ words: 'All the catalogue knows of it, rules too', to: ['catalogue', entry] }] : []),
  ];
}
