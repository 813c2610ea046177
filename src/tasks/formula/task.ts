import { differences, doseHolding } from '../../core/drink/formula';
import type { Formula } from '../../records/kind/formula';
import type { AnyRecord } from '../../records/kind/kinds';
import { find, list, newId, newRecord } from '../../records/shelf';
import { formatPlain } from '../../ui/format';
import { choice, textOf, valueOf, words, type Field } from '../engine/fields';
import type { RunState } from '../engine/fold';
import type { Step, Task } from '../engine/task';
import { blendName, blendNotes, earlierOf, linesOf, originOptions, rowsOf } from './lines';
import { drawLines } from './LinesEditor';
import { Refusal } from '../../core/text/refusal';

const fields = {
  from: () => choice({ name: 'from', title: 'Begins with', options: originOptions() }),
  name: (preset: string) => words({ name: 'name', title: 'Name of the formula', max: 60, preset }),
  notes: (preset: string) =>
    words({ name: 'notes', title: 'Notes', optional: true, max: 500, help: 'Optional.', preset }),
};

function nameField(run: RunState): Field<string> {
  const from = run.typed['from'];
  const origin = earlierOf(run) ?? find('layering', from) ?? find('proportions', from) ?? find('vial', from);
  return fields.name(blendName(from) ?? origin?.name ?? '');
}

/** Begins with the notes of the version before, or with the drops and the liking of a blend that was found. */
function notesField(run: RunState): Field<string> {
  return fields.notes(earlierOf(run)?.notes ?? blendNotes(run.typed['from']));
}

/** Why it is no new version: nothing in it is new; null where something is. */
function sameAsBefore(run: RunState): string | null {
  const earlier = earlierOf(run);
  const lines = linesOf(run);
  if (!earlier || lines.length === 0 || differences(earlier.lines, lines).length > 0) return null;
  const isNew = valueOf(run, notesField(run)) !== earlier.notes || valueOf(run, nameField(run)) !== earlier.name;
  return isNew
    ? null
    : `This is version ${earlier.version} as it is: change a material, its parts, the name or the notes.`;
}

/** Version that the formula becomes, counted over all that share its root. */
function versionOf(earlier: Formula | undefined): number {
  if (!earlier) return 1;
  const all = list('formula').filter(({ root }) => root === earlier.root);
  return Math.max(...all.map(({ version }) => version), earlier.version) + 1;
}

/** What is different from the version before, a sentence each. */
function changeWords(run: RunState): string[] {
  const earlier = earlierOf(run);
  const lines = linesOf(run);
  if (!earlier || lines.length === 0) return [];
  const nameOf = (id: string) => [...lines, ...earlier.lines].find(({ material }) => material === id)!.name;
  const changes = differences(earlier.lines, lines);
  if (changes.length === 0) return ['Nothing is different from the version before.'];
  return [
    ...changes.map(
      ({ id, before, after }) =>
        `${nameOf(id)}: ${formatPlain(before * 100, 3)} % then, ‹${formatPlain(after * 100, 3)} %› now.`,
    ),
    ...holdingWords(earlier, lines),
  ];
}

/** By how much the dose of the whole changes so that what stayed keeps its mg/kg; nothing where it cannot. */
function holdingWords(earlier: Formula, lines: Formula['lines']): string[] {
  const factor = doseHolding(earlier.lines, lines, 1);
  if (factor === null) return ['What stayed has other proportions than before: no dose holds all of it.'];
  const times = formatPlain(factor, 4);
  return [`What stayed keeps its mg/kg at ‹${times} times› the dose of the whole: page and batch begin with that.`];
}

function steps(run: RunState): Step[] {
  const from: Step = { key: 'from', say: 'What does the formula begin with?', ask: [fields.from()] };
  const wrong = rowsOf(run).find(({ parts }) => textOf(run, parts) !== '' && valueOf(run, parts) === null);
  const none = linesOf(run).length === 0;
  const lines: Step = {
    key: 'lines',
    say: 'Parts by mass of neat material.',
    more: ['Only the ratios count. Set a material to 0 parts to leave it out.'],
    draw: drawLines,
    ...(wrong ? { problem: `The parts of ${wrong.name} are not a number.` } : {}),
    ...(none ? { problem: 'A formula needs parts of at least one material.' } : {}),
  };
  const version = versionOf(earlierOf(run));
  const same = sameAsBefore(run);
  const name: Step = {
    key: 'name',
    say: version > 1 ? `This becomes version ‹${version}›.` : 'What is it called?',
    more: changeWords(run),
    ask: [nameField(run), notesField(run)],
    done: 'Save',
    ...(same === null ? {} : { problem: same }),
  };
  return run.typed['of'] ? [lines, name] : [from, lines, name]; // begun on the page of what it comes from
}

function keep(run: RunState): AnyRecord[] {
  const lines = linesOf(run);
  if (lines.length === 0) throw new Refusal('A formula needs parts of at least one material.');
  const same = sameAsBefore(run);
  if (same) throw new Refusal(same);
  const earlier = earlierOf(run);
  const from = run.typed['from'];
  const id = newId();
  return [
    newRecord('formula', {
      id,
      name: valueOf(run, nameField(run))!,
      root: earlier?.root ?? id,
      version: versionOf(earlier),
      lines,
      notes: valueOf(run, notesField(run)) ?? '',
      from: from && from !== 'hand' ? [from] : [],
    }),
  ];
}

/** A formula by hand, from a layering or a trial; a change is a new version. */
export const formula: Task = {
  id: 'formula',
  recorded: true,
  title: (run) => ['Write a formula', earlierOf(run)?.name].filter(Boolean).join(' · '),
  steps,
  keep,
};
