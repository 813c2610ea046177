import { sharesOf, type PartsLine } from '../../core/drink/formula';
import type { Formula } from '../../records/kind/formula';
import { find, list } from '../../records/shelf';
import { formatPlain, formatTyped } from '../../ui/format';
import type { Option } from '../../ui/controls/field';
import { amount, valueOf, type Field } from '../engine/fields';
import type { RunState } from '../engine/fold';

/** A row of the editor: which material now, how many parts, and what is typed where. */
export interface Row {
  readonly key: string;
  readonly material: string;
  readonly name: string;
  readonly parts: Field<number>;
}

/** What formulas can begin from: an earlier one, a layering, a counted trial, or nothing. */
export function originOptions(): Option[] {
  const formulas = list('formula').map(({ id, name, version }) => ({
    value: id,
    label: name,
    hint: `version ${version}`,
  }));
  const layerings = list('layering').map(({ id, name, verdict }) => ({
    value: id,
    label: name,
    hint: `layering${verdict.decision && `, ${verdict.decision === 'drop' ? 'rejected' : verdict.decision}`}`,
  }));
  const trials = list('vial')
    .filter(({ contents }) => contents.length > 1)
    .map(({ id, name, code }) => ({ value: id, label: `${code} · ${name}`, hint: 'counted trial' }));
  return [{ value: 'hand', label: 'Nothing: by hand' }, ...trials, ...layerings, ...formulas];
}

/** The formula that a new version is made of. */
export function earlierOf(run: RunState): Formula | undefined {
  return find('formula', run.typed['from']);
}

/** Rows as they stand: those of the origin, then those that were added. */
export function rowsOf(run: RunState): Row[] {
  const first = originLines(run.typed['from']).map(({ material, share }) => rowOf(run, material, { material, share }));
  const added: Row[] = [];
  for (let i = 1; run.typed[`add.${i}`]; i++)
    added.push(rowOf(run, `add.${i}`, { material: run.typed[`add.${i}`]!, share: 0 }));
  return [...first, ...added];
}

/** Key under which the next material is added. */
export function nextKey(run: RunState): string {
  let i = 1;
  while (run.typed[`add.${i}`]) i++;
  return `add.${i}`;
}

/** The lines as typed, without those of no parts. */
export function linesOf(run: RunState): Formula['lines'] {
  const merged = new Map<string, Formula['lines'][number]>();
  for (const { material, name, parts } of rowsOf(run)) {
    const share = valueOf(run, parts) ?? 0;
    if (share > 0) merged.set(material, { material, name, share: (merged.get(material)?.share ?? 0) + share });
  }
  return [...merged.values()];
}

/** Share of a material in the lines, %, for reading. */
export function percentOf(lines: readonly PartsLine[], material: string): string {
  const share = lines.length > 0 ? (sharesOf(lines).find(({ id }) => id === material)?.share ?? 0) : 0;
  return `${formatPlain(share * 100, 3)} %`;
}

/** Materials that can be put in. */
export function materialOptions(): Option[] {
  return list('material')
    .map(({ id, name, code }) => ({ value: id, label: `${name} (${code})` }))
    .sort((a, b) => a.label.localeCompare(b.label));
}

function rowOf(run: RunState, key: string, line: PartsLine): Row {
  const material = run.typed[`swap.${key}`] || line.material;
  const name = find('material', material)?.name ?? earlierOf(run)?.lines.find((one) => one.material === material)?.name;
  const preset = line.share > 0 ? formatTyped(line.share) : '';
  const parts = amount({ name: `part.${key}`, title: 'Parts', unit: 'parts', min: 0, max: 1_000_000, preset });
  return { key, material, name: name ?? 'a material that is gone', parts };
}

/** What the origin holds: strips by strength times dips, a trial as it was counted; in parts of a hundred. */
function originLines(id: string | undefined): PartsLine[] {
  const formula = find('formula', id);
  if (formula) return formula.lines;
  const strips = find('layering', id)?.strips.flatMap(({ vial, dips }) =>
    (find('vial', vial)?.contents ?? []).map(({ material, strength }) => ({ material, share: strength.value * dips })),
  );
  const trial = find('vial', id)?.contents.map(({ material, strength }) => ({ material, share: strength.value }));
  const lines = strips ?? trial ?? [];
  if (lines.length === 0) return [];
  return sharesOf(lines).map((line) => ({ material: line.id, share: Number((line.share * 100).toPrecision(3)) }));
}
