import { sharesOf, type PartsLine } from '../../core/drink/formula';
import type { Formula } from '../../records/kind/formula';
import { find, list } from '../../records/shelf';
import { formatFixed, formatPlain, formatTyped } from '../../ui/format';
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
  const searches = list('proportions').map(({ id, name }) => ({ value: id, label: name, hint: 'proportions found' }));
  return [{ value: 'hand', label: 'Nothing: by hand' }, ...trials, ...searches, ...layerings, ...formulas];
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

/** The best blend of a search for proportions, in parts of a hundred of neat material: drops times their mass and strength. */
function blendLines(id: string | undefined): PartsLine[] {
  const search = find('proportions', id);
  const mg = new Map<string, number>();
  search?.vials.forEach(({ id: vial, mgPerDrop }, i) => {
    for (const { material, strength } of find('vial', vial)?.contents ?? [])
      mg.set(material, (mg.get(material) ?? 0) + search.best.drops[i]! * mgPerDrop * strength.value);
  });
  const lines = [...mg].flatMap(([material, share]) => (share > 0 ? [{ material, share }] : []));
  if (lines.length === 0) return [];
  return sharesOf(lines).map((line) => ({ material: line.id, share: Number((line.share * 100).toPrecision(3)) }));
}

/** What a formula of the best blend is called until a name is typed: 'RHU + CARD 3:3'; undefined where it comes from something else. */
export function blendName(id: string | undefined): string | undefined {
  const search = find('proportions', id);
  const used = search?.vials.flatMap(({ id: vial, code }, i) => {
    const drops = search.best.drops[i]!;
    return drops > 0 ? [{ code: find('vial', vial)?.code ?? code, drops }] : [];
  });
  return used && `${used.map(({ code }) => code).join(' + ')} ${used.map(({ drops }) => drops).join(':')}`;
}

/** The drops of the best blend and how it is expected to be liked; '' where the formula comes from something else. */
export function blendNotes(id: string | undefined): string {
  const search = find('proportions', id);
  if (!search) return '';
  const { drops, expected, uncertainty } = search.best;
  const each = search.vials.flatMap(({ code }, i) => (drops[i]! > 0 ? `${drops[i]} ${code}` : []));
  return `${each.join(' + ')}: liking expected ${formatFixed(expected, 1)} ± ${formatFixed(2 * uncertainty, 1)} of 9.`;
}

/** What the origin holds: strips by strength times dips, a trial as it was counted; in parts of a hundred. */
function originLines(id: string | undefined): PartsLine[] {
  const formula = find('formula', id);
  if (formula) return formula.lines;
  const blend = blendLines(id);
  if (blend.length > 0) return blend;
  const strips = find('layering', id)?.strips.flatMap(({ vial, dips }) =>
    (find('vial', vial)?.contents ?? []).map(({ material, strength }) => ({ material, share: strength.value * dips })),
  );
  const trial = find('vial', id)?.contents.map(({ material, strength }) => ({ material, share: strength.value }));
  const lines = strips ?? trial ?? [];
  if (lines.length === 0) return [];
  return sharesOf(lines).map((line) => ({ material: line.id, share: Number((line.share * 100).toPrecision(3)) }));
}
