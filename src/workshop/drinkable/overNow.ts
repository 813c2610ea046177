import type { Jurisdiction, Trait } from '../../core/limits/figure';
import { isOver, type Finding } from '../../core/limits/finding';
import { CONCENTRATE } from '../../core/drink/batchPlan';
import { massFraction } from '../../core/number/units';
import { readNumber } from '../../core/number/typed';
import type { Batch } from '../../records/kind/batch';
import { isOf, type AnyRecord } from '../../records/kind/kinds';
import { find, shelf } from '../../records/shelf';
import { ADULT } from '../../tables/drinkers';
import { formatPlain } from '../../ui/format';
import { againstText } from './limitRules';
import { findingsOf, LOT, type Line } from './judging';
import { partsOfBatch, partsOfTasting, type KeptDrink } from './partsOfDrink';

/** One limit that a kept drink is over, by the rules of one market. */
export interface Over {
  readonly finding: Finding;
  readonly jurisdiction: Jurisdiction;
}

/**
 * What a batch or a dosed drink is over by the rules of today, worst first: of the market it was made for, and of the market
 * in the settings. Worked out from what is in it, never from what was found when it was made. A concentrate that was left
 * over is over where its batch is. Nothing for other records.
 */
export function overNow(record: AnyRecord): readonly Over[] {
  const here = shelf.records.value;
  const market = shelf.settings.value.jurisdiction ?? 'EU';
  if (known.here !== here || known.market !== market) known = { here, market, found: new WeakMap() };
  const before = known.found.get(record);
  if (before) return before;
  const found = workedOut(record, market);
  known.found.set(record, found);
  return found;
}

/** What was worked out, while the Shelf and the market stay as they are: lists ask again and again. */
let known: { here: unknown; market: Jurisdiction; found: WeakMap<AnyRecord, readonly Over[]> } = {
  here: null,
  market: 'EU',
  found: new WeakMap(),
};

function workedOut(record: AnyRecord, market: Jurisdiction): readonly Over[] {
  if (isOf('batch', record)) {
    const markets = new Set([record.jurisdiction === 'US' ? 'US' : 'EU', market] as const);
    const kept = partsOfBatch(record);
    return [...markets].flatMap((one) => overIn(kept, one, record.asked));
  }
  if (isOf('tasting', record)) {
    return overIn(partsOfTasting(record), market, {});
  }
  const batch = isOf('vial', record) ? batchOfConcentrate(record) : null;
  return batch ? overNow(batch) : [];
}

/** The batch that a concentrate was left over from; null for other things. */
export function batchOfConcentrate(record: AnyRecord): Batch | null {
  if (!isOf('vial', record) || record.sort !== 'concentrate') return null;
  return record.from.flatMap((id) => find('batch', id) ?? [])[0] ?? null;
}

/** What it is over with any strength that it may have, the least or the most, each limit once. */
function overIn(
  { parts, drink, mostAbv, traits }: KeptDrink,
  jurisdiction: Jurisdiction,
  asked: Batch['asked'],
): Over[] {
  const found = [...new Set([drink.abv, mostAbv])].flatMap((abv) =>
    findingsOf(
      parts,
      { ...drink, abv },
      {
        jurisdiction,
        portionG: ADULT.portionG,
        bodyKg: ADULT.bodyKg,
        saidOf: (trait: Trait) => traits[`trait.${trait}`],
        typed: (material, published) => certificatesIn(asked, material, published),
      },
    ).filter(isOver),
  );
  const once = new Map(found.map((finding) => [`${finding.check} ${finding.what} ${finding.max}`, finding]));
  return [...once.values()].map((finding) => ({ finding, jurisdiction }));
}

/** Contents that were typed from certificates when the batch was made, % w/w. */
function certificatesIn(
  asked: Batch['asked'],
  material: string,
  published: readonly { cas: string; name: string }[],
): Line[] {
  return published.flatMap(({ cas, name }) => {
    const read = readNumber(asked[`cert.${material}.${cas}`] ?? '');
    const percent = read.kind === 'two' ? read.readings[1] : read.kind === 'number' ? read.value : null;
    return percent === null ? [] : [{ cas, name, share: massFraction(percent / 100), from: LOT }];
  });
}

/** Which limit, value and maximum: 'over the EU limit of propane-1,2-diol (E 1520): 1960 ± 10 mg/L of 1000 mg/L'. */
export function overWords({ finding, jurisdiction }: Over): string {
  const { check, state, what, rule } = finding;
  if (state === 'prohibited') return `not allowed in the ${jurisdiction}: ${what} (${rule})`;
  const of = check === 'limit' ? `the ${jurisdiction} limit` : 'the daily intake';
  return `over ${of} of ${what}: ${againstText(finding)}`;
}

/** All that a record is over, in words; of a concentrate with the dosage at which it is. Nothing for what is over nothing. */
export function overLines(record: AnyRecord): string[] {
  const batch = batchOfConcentrate(record);
  const at = batch ? `at ${dosageOf(batch)} g/L, as in ${batch.code ?? batch.name}: ` : '';
  return overNow(record).map((one) => `${at}${overWords(one)}`);
}

/** g of concentrate in a litre of the drink. */
function dosageOf({ weighed, drink }: Batch): string {
  const poured = weighed.filter(({ id, into }) => id === CONCENTRATE && into !== 'concentrate');
  return formatPlain(poured.reduce((sum, { massG }) => sum + massG.value, 0) / drink.litres.value, 3);
}
