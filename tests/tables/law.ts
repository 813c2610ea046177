import type { BanRow, ConcernRow, Figure, IntakeRow, LimitRow } from '../../src/core/limits/figure';
import type { PlantRow } from '../../src/core/limits/plant';
import { intakes } from '../../src/tables/adi';
import {
  concerns,
  cramerClasses,
  cramerFromMemory,
  cramerMemory,
  cramerSource,
} from '../../src/tables/concernThresholds';
import { constituents, type ConstituentRow } from '../../src/tables/constituents';
import { bansEu, limitsEu } from '../../src/tables/limitsEu';
import { carriers, limitsCarriers, type CarrierRow } from '../../src/tables/limitsCarriers';
import { bansUs, limitsUs } from '../../src/tables/limitsUs';

/** The tables of law and intake, as the app has them. */
export const lawTables = {
  bansEu,
  limitsEu,
  bansUs,
  limitsUs,
  limitsCarriers,
  carriers,
  intakes,
  constituents,
  concerns,
  cramerClasses: asRows(cramerClasses),
  cramerFromMemory: asRows(cramerFromMemory),
  cramerFigures: [cramerSource, cramerMemory],
};

export type LawTables = typeof lawTables;

function asRows(classes: Readonly<Record<string, string>>) {
  return Object.entries(classes).flatMap(([cramerClass, list]) =>
    list.split(' ').map((cas) => ({ cramerClass, cas: [cas] })),
  );
}

/** Every row as one line in the form of tests/reference/law.json, so that a slip in any of its fields shows. */
export function linesOf(tables: LawTables): Record<string, string[]> {
  return {
    bansEu: tables.bansEu.map(banLine),
    limitsEu: tables.limitsEu.map(limitLine),
    bansUs: tables.bansUs.map(banLine),
    limitsUs: tables.limitsUs.map(limitLine),
    limitsCarriers: tables.limitsCarriers.map(limitLine),
    carriers: tables.carriers.map(carrierLine),
    intakes: tables.intakes.map(intakeLine),
    materials: [...new Set(tables.constituents.map(materialLine))],
    constituents: tables.constituents.map(constituentLine),
    concerns: tables.concerns.map(concernLine),
    cramerClasses: tables.cramerClasses.map(classLine),
    cramerFromMemory: tables.cramerFromMemory.map(classLine),
    cramerFigures: tables.cramerFigures.map((figure) => line(levelOf(figure), figure.source)),
  };
}

/** Lines that stand in one list and not in the other; a line that stands twice in one of them counts too. */
export function differences(table: Record<string, string[]>, pinned: Record<string, readonly string[]>): string[] {
  return Object.keys({ ...table, ...pinned }).flatMap((name) => {
    const [here, there] = [table[name] ?? [], pinned[name] ?? []];
    const extra = without(here, there).map((line) => `${name}, not pinned: ${line}`);
    return [...extra, ...without(there, here).map((line) => `${name}, missing: ${line}`)];
  });
}

function without(some: readonly string[], others: readonly string[]): string[] {
  const left = new Map<string, number>();
  for (const one of others) left.set(one, (left.get(one) ?? 0) + 1);
  return some.filter((one) => {
    const count = left.get(one) ?? 0;
    left.set(one, count - 1);
    return count <= 0;
  });
}

const line = (...fields: (string | undefined)[]) => fields.map((field) => field ?? '').join(' | ');
const levelOf = ({ level, asOf }: Figure) => `${level} ${asOf}`.trim();
const numbersIn = (text = '') => (text.match(/\d+(\.\d+)*/g) ?? []).join(' ');
/** Factors to five decimals; those of numbers that the row does not name have no effect, and are not said. */
const counted = ({ cas, as = {} }: { cas: readonly string[]; as?: Readonly<Record<string, number>> }) =>
  cas.map((one) => (one in as ? `${one}*${Number(as[one]!.toFixed(5))}` : one)).join(' ');

function plantsOf({ plants = [], parts, partSaid, named }: PlantRow): string {
  const only = parts && ` (${parts.join(' ')}${partSaid ? ', said' : ''})`;
  return [plants.join(', '), only, named && ` named ${named}`].filter(Boolean).join('');
}

function banLine(row: BanRow): string {
  const unless = row.unless && `unless ${row.unless}`;
  const { jurisdiction, what, rule, source, note } = row;
  return line(
    jurisdiction,
    what,
    row.cas.join(' '),
    plantsOf(row),
    rule,
    unless,
    levelOf(row),
    source,
    numbersIn(note),
  );
}

function limitLine(row: LimitRow): string {
  const via = [row.via?.join(' '), row.viaPlants?.join(', ')].filter(Boolean).join(' ');
  const where = [
    row.where && `where ${row.where}`,
    row.whereNot && `not where ${row.whereNot}`,
    row.abvBelow !== undefined && `below ${row.abvBelow} %`,
    row.onlyWith && `only with ${row.onlyWith.map((group) => group.join(' ')).join(' and ')}`,
    via && `via ${via}`,
  ];
  const { jurisdiction, what, max, unit, effect, drink, outside, source, note } = row;
  const amount = `${max} ${unit}`;
  const conditions = where.filter(Boolean).join(', ');
  const level = levelOf(row);
  return line(
    jurisdiction,
    what,
    counted(row),
    amount,
    effect,
    drink,
    conditions,
    outside,
    level,
    source,
    numbersIn(note),
  );
}

function carrierLine(row: CarrierRow): string {
  return line(row.cas, row.eNumber, row.eu, row.us, levelOf(row), row.source);
}

function intakeLine(row: IntakeRow): string {
  const amount = `${row.max ?? 'no'} mg per ${row.per}`;
  return line(row.body, row.what, counted(row), amount, levelOf(row), row.source, numbersIn(row.note));
}

function materialLine(row: ConstituentRow): string {
  const { material, oil, plants = [], parts, named } = row;
  return line(material, oil.join(' '), plants.join(', '), parts?.join(' ') ?? (named && `named ${named}`));
}

function constituentLine({ material, name, cas, low, high, typical, level, source }: ConstituentRow): string {
  const percent = (share: number | null) => (share === null ? '' : String(Number((share * 100).toPrecision(12))));
  return line(material, name, cas, percent(low), percent(high), percent(typical), level, source);
}

function concernLine(row: ConcernRow): string {
  return line(row.cramerClass, String(row.microgramPerPersonDay), levelOf(row), row.source, numbersIn(row.note));
}

function classLine({ cramerClass, cas }: { cramerClass: string; cas: readonly string[] }): string {
  return line(cramerClass, ...cas);
}
