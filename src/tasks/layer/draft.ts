import type { Formula } from '../../records/kind/formula';
import { list, newId, newRecord } from '../../records/shelf';
import { formatTyped } from '../../ui/format';
import { answer } from '../engine/answers';
import { amount, words, type Field } from '../engine/fields';
import type { RunState } from '../engine/fold';
import type { Step } from '../engine/task';
import { codesOf } from './strips';
import { fields } from './fields';
import { judged } from './verdict';

interface Line {
  readonly material: string;
  readonly name: string;
  /** Parts of a hundred of neat material. */
  readonly share: number;
}

/**
 * Where the shares of a draft start: strength times dips, in parts of a hundred. Every dip is taken to lift as much
 * liquid, which is a start and no more.
 */
export function draftLines(run: RunState): Line[] {
  const lines = new Map<string, Line>();
  for (const { vial, dips } of judged(run))
    for (const { material, name, strength } of vial.contents) {
      const before = lines.get(material)?.share ?? 0;
      lines.set(material, { material, name, share: before + strength.value * dips });
    }
  const total = [...lines.values()].reduce((sum, { share }) => sum + share, 0);
  return [...lines.values()].map((line) => ({ ...line, share: (100 * line.share) / total }));
}

function nameField(run: RunState): Field<string> {
  return words({ name: 'draft.name', title: 'Name of the formula', preset: codesOf(judged(run)), max: 60 });
}

function shareField({ material, name, share }: Line): Field<number> {
  return amount({
    name: `draft.share.${material}`,
    title: name,
    unit: 'parts',
    min: 0,
    preset: formatTyped(share, 3),
  });
}

/** Whether the layering goes on to a formula. In the first version every one that was kept did, unless it was said otherwise. */
function wanted(run: RunState): boolean {
  const draft = answer(run, fields.draft) ?? (run.at === 'draft' ? 'yes' : 'no');
  return answer(run, fields.decision) === 'keep' && draft === 'yes';
}

const withoutFormula: Step = {
  key: 'draft',
  say: 'No formula this time.',
  offers: [{ words: 'Take it to a formula', type: { [fields.draft.name]: 'yes' } }],
  done: 'Save',
};

/** The screen of the formula: there when the layering is taken to one. */
export function draftSteps(run: RunState): Step[] {
  if (!wanted(run)) return run.at === 'draft' ? [withoutFormula] : [];
  const lines = draftLines(run);
  const none = lines.every((line) => answer(run, shareField(line)) === 0);
  const old = earlier(lines);
  return [
    {
      key: 'draft',
      say: 'The formula, in parts of neat material.',
      more: [
        'Starts from strength × dips. Strips are dipped alike, a formula need not be: adjust freely; 0 leaves a material out.',
        ...(old ? [`It becomes version ${old.version + 1} of ${old.name}.`] : []),
      ],
      ask: [nameField(run), ...lines.map(shareField)],
      offers: [{ words: 'Save the layering only', type: { [fields.draft.name]: 'no' }, leave: true }],
      ...(none ? { problem: 'All parts are 0: give at least one material its parts.' } : {}),
      done: 'Save both',
    },
  ];
}

/** The newest formula of the same materials that a layering led to: a draft of them is its next version. */
function earlier(lines: readonly Line[]): Formula | undefined {
  const key = (formula: { lines: readonly { material: string }[] }): string =>
    formula.lines
      .map(({ material }) => material)
      .sort()
      .join(' ');
  const layerings = new Set(list('layering').map(({ id }) => id));
  return list('formula')
    .filter((formula) => key(formula) === key({ lines }) && formula.from.some((id) => layerings.has(id)))
    .sort((a, b) => b.version - a.version)[0];
}

/** The formula of a kept layering, or none. */
export function draftOf(run: RunState, layering: string): Formula[] {
  if (!wanted(run)) return [];
  const lines = draftLines(run)
    .map((line) => ({ ...line, share: answer(run, shareField(line))! }))
    .filter(({ share }) => share > 0);
  const old = earlier(lines);
  const id = newId();
  return [
    newRecord('formula', {
      id,
      name: answer(run, nameField(run))!,
      root: old?.root ?? id,
      version: (old?.version ?? 0) + 1,
      lines,
      notes: '',
      from: [layering, ...(old ? [old.id] : [])],
    }),
  ];
}
