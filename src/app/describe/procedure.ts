import { CONCENTRATE, SUGAR, WATER } from '../../core/drink/batchPlan';
import { sucroseDensity } from '../../core/liquid/sucrose';
import { waterDensity } from '../../core/liquid/water';
import { celsius, massFraction } from '../../core/number/units';
import type { Batch, Weighed } from '../../records/kind/batch';
import { find, list } from '../../records/shelf';
import { acids, preservatives } from '../../tables/syrupAdditives';
import { emulsifiers } from '../../tables/emulsion/emulsifiers';
import { syrupExtras } from '../../tables/keeping/syrupExtras';
import { formatGiven, formatPlain, measuredText } from '../../ui/format';
import { weighedText } from '../../ui/weighed';
import { sinceOf } from '../../workshop/made/since';
import { drinkWords, gasWords } from './describeBatch';
import { lostFacts } from './wentIn';

/** One vessel of a batch: what is done, what is weighed into it, in that order, and what that makes. */
export interface Stage {
  readonly into: Weighed['into'];
  readonly title: string;
  readonly does: readonly string[];
  readonly rows: readonly Weighed[];
  readonly makes: string;
}

const INTO = ['concentrate', 'syrup', 'drink'] as const;

/** A batch as a second person could make it: its vessels in order; all of it from what was really planned and weighed. */
export function procedureOf(batch: Batch): Stage[] {
  const made = INTO.flatMap((into) => {
    const rows = batch.weighed.filter((one) => one.into === into && !one.corrects);
    return rows.length === 0 ? [] : [{ into, rows, ...stages[into](batch, rows) }];
  });
  return [...made, ...correctionOf(batch)];
}

/** What was added after the drink was measured, in the order in which it was. */
function correctionOf(batch: Batch): Stage[] {
  const rows = batch.weighed.filter(({ corrects }) => corrects);
  if (rows.length === 0) return [];
  const does = ['Added after the drink was measured; stir, and measure again.'];
  return [{ into: 'drink', rows, title: 'Correction', does, makes: drinkWords(batch) }];
}

/** The drink as it was before the first correction. */
function beforeCorrection(batch: Batch): Batch {
  const [first] = sinceOf(batch, 'mended');
  return first ? { ...batch, drink: { ...batch.drink, ...first.before } } : batch;
}

type Words = Pick<Stage, 'title' | 'does' | 'makes'>;

const stages: Readonly<Record<Weighed['into'], (batch: Batch, rows: readonly Weighed[]) => Words>> = {
  concentrate: (batch, rows) => ({
    title: 'Concentrate',
    does: [
      ...stocksOf(batch, rows),
      ...(batch.drink.emulsion
        ? emulsionOf(batch, rows)
        : ['Weigh in this order into one vessel, then stir until it is clear.']),
    ],
    makes: `${total(rows)} of concentrate`,
  }),
  syrup: (_, rows) => ({
    title: 'Syrup',
    does: [
      `Weigh in this order; stir until each has dissolved${has(rows, SUGAR) ? ', and let it cool to 20 °C' : ''}.`,
      ...(has(rows, CONCENTRATE) ? ['The concentrate goes in last.'] : []),
    ],
    makes: `${total(rows)} of syrup${syrupWords(rows)}`,
  }),
  drink: (batch, rows) => ({
    title: 'Drink',
    does: [mixingWords(batch, rows), ...(batch.drink.gas ? [`Carbonate: ${gasWords(batch.drink.gas)}.`] : [])],
    makes: `${total(drinkRows(batch))}: ${drinkWords(beforeCorrection(batch))}`,
  }),
};

/** Dilutions that were made first, because the scale shows too little of what is neat: what was taken, and what it was made up to. */
function stocksOf({ uses, lost = [] }: Batch, rows: readonly Weighed[]): string[] {
  const ids = new Set(rows.flatMap((row) => (row.source && isDiluted(row) ? [row.source] : [])));
  return [...ids].flatMap((id) => {
    const own = rows.filter(({ source }) => source === id);
    const taken = uses.reduce((sum, use) => sum + (use.id === id ? use.massG : 0), 0);
    const away = lost.reduce((sum, one) => sum + (one.id === id ? one.massG : 0), 0);
    const share = (taken - away) / grams(own);
    if (!(share > 0 && share < 1)) return [];
    return [
      `Dilute first: ${formatPlain(taken, 3)} g made up to ${formatPlain(taken / share, 3)} g with the carrier, for ${own[0]!.name}.`,
    ];
  });
}

/** Whether it was diluted to be weighed; what was kept without its share tells it in its name alone. */
function isDiluted({ share, name }: Weighed): boolean {
  return share !== undefined || /, (thinned|diluted) to [\d.,]+ %/.test(name);
}

/** Everything of the drink as it was made first; what is in the concentrate counts as its row. */
function drinkRows({ weighed }: Batch): Weighed[] {
  return weighed.filter(({ into, corrects }) => into !== 'concentrate' && !corrects);
}

/** Common practice of emulsions: two phases, then coarse, then fine, to the size that was measured, or else planned. */
function emulsionOf({ asked }: Batch, rows: readonly Weighed[]): string[] {
  const emulsifier = emulsifiers.find(({ id }) => has(rows, id))?.name ?? 'emulsifier';
  const agent = rows.some(({ id }) => id.startsWith('agent-'));
  return [
    `Oil phase: the oils${agent ? ' with the weighting agent, stirred until it has dissolved' : ''}. Water phase: the ${emulsifier} in the water, left to hydrate.`,
    `Stir the oil into the water phase, then homogenise${droplets(asked)}.`,
  ];
}

/** ': 90 % of the oil in droplets under 1 µm, measured'. */
function droplets({ d90, droplet }: Batch['asked']): string {
  const size = d90 || droplet;
  if (!size) return '';
  return `: 90 % of the oil in droplets under ${formatGiven(Number(size))} µm${d90 ? ', measured' : ''}`;
}

function has(rows: readonly Weighed[], id: string): boolean {
  return rows.some((one) => one.id === id);
}

/** Grams of all rows, or of those of one id. */
function grams(rows: readonly Weighed[], id?: string): number {
  if (id === undefined) return rows.reduce((sum, { massG }) => sum + massG.value, 0);
  return rows.reduce((sum, one) => sum + (one.id === id ? one.massG.value * (one.share ?? 1) : 0), 0);
}

function total(rows: readonly Weighed[]): string {
  const all = grams(rows);
  return all < 10_000 ? `${formatPlain(all, 4)} g` : `${formatPlain(all / 1000, 4)} kg`;
}

/** '; 37.1 °Brix from its sugar, about 3.4 L at 20 °C'; nothing without sugar. */
function syrupWords(rows: readonly Weighed[]): string {
  const brix = syrupBrix(rows);
  if (brix === null) return '';
  return `; ${formatPlain(brix, 3)} °Brix from its sugar, about ${formatPlain(syrupLitres(rows)!, 3)} L at 20 °C`;
}

/** g of sugar in 100 g of the syrup; null without sugar, or beyond what is known of such syrup. */
function syrupBrix(rows: readonly Weighed[]): number | null {
  const brix = (100 * (grams(rows, SUGAR) + ownSugar(rows))) / grams(rows);
  return brix > 0 && brix <= 84 ? brix : null;
}

/** g of sugar that ingredients of one's own bring, a juice for instance, by the °Brix of their bottle. */
function ownSugar(rows: readonly Weighed[]): number {
  return rows.reduce((sum, { own, source, massG, share = 1 }) => {
    const brix = own ? (find('bottle', source)?.holds?.brix ?? 0) : 0;
    return sum + (massG.value * share * brix) / 100;
  }, 0);
}

/** Volume at 20 °C in L, as if all that is dissolved were sugar; null as above. */
function syrupLitres(rows: readonly Weighed[]): number | null {
  const brix = syrupBrix(rows);
  return brix === null ? null : grams(rows) / sucroseDensity(massFraction(brix / 100), celsius(20)) / 1000;
}

/** Parts of water by volume to one of syrup, from what was weighed; null where the drink is not mixed from syrup. */
export function partsOfWater(batch: Batch): number | null {
  const syrup = syrupLitres(batch.weighed.filter(({ into }) => into === 'syrup'));
  const water = grams(
    batch.weighed.filter(({ into, corrects }) => into === 'drink' && !corrects),
    WATER,
  );
  return syrup === null || water === 0 ? null : water / (1000 * waterDensity(celsius(20))) / syrup;
}

function mixingWords(batch: Batch, rows: readonly Weighed[]): string {
  const parts = partsOfWater(batch);
  const syrup = grams(batch.weighed.filter(({ into }) => into === 'syrup'));
  if (parts !== null)
    return batch.asked['throw.by'] === 'mass'
      ? `Mix all of the syrup with the water: 1 + ${formatPlain(grams(rows, WATER) / syrup, 2)} by mass.`
      : `Mix all of the syrup with the water: 1 + ${formatPlain(parts, 2)} by volume.`;
  return has(rows, WATER) ? 'Mix with the water.' : 'Mix.';
}

/** What was asked of the drink: acid, preservatives and ingredients of one's own in a litre, from what was weighed. */
export function additivesOf(batch: Batch): (readonly [name: string, text: string])[] {
  const known = [...acids, ...preservatives, ...syrupExtras].map(({ id }) => id);
  const rows = batch.weighed.filter(({ id, own }, i) => (own || known.includes(id)) && firstOf(batch, id) === i);
  return rows.map(({ id, name }) => {
    const perLitre = grams(batch.weighed, id) / batch.drink.litres.value;
    return [name, perLitre < 1 ? `${formatPlain(1000 * perLitre, 3)} mg/L` : `${formatPlain(perLitre, 3)} g/L`];
  });
}

function firstOf({ weighed }: Batch, id: string): number {
  return weighed.findIndex((one) => one.id === id);
}

/** Where all of the concentrate is: in the drink, kept in a vial, or lost. */
export function balanceOfBatch(batch: Batch): readonly (readonly [what: string, text: string, why?: string])[] {
  const made = batch.weighed.filter(({ into }) => into === CONCENTRATE);
  const used = batch.weighed.filter(({ id, into }) => id === CONCENTRATE && into !== 'concentrate');
  if (made.length === 0) return lostFacts(batch);
  const kept = list('vial').filter(({ from }) => from.includes(batch.id));
  return [
    ['Concentrate made', total(made)],
    ...used.map(({ massG }) => ['In the drink', weighedText(massG)] as const),
    ...kept.map(({ massG, code }) => ['Kept as a vial', measuredText(massG, 'g'), code] as const),
    ...lostFacts(batch),
  ];
}
