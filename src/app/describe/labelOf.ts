import { CONCENTRATE } from '../../core/drink/batchPlan';
import type { LabelContent, LabelSpan } from '../../core/label/labelContent';
import { rankOf, type LabelPart } from '../../core/label/labelOrder';
import { over, plus } from '../../core/number/measured';
import type { Batch } from '../../records/kind/batch';
import { byKind, type LabelledKind, type RecordOf } from '../../records/kind/kinds';
import type { Bottle } from '../../records/kind/material';
import { codeTextOf, foundByShortId, shortIdOf, spacedShortId } from '../../records/kind/shortId';
import type { Vial } from '../../records/kind/vial';
import { ringsOf } from '../../ui/drawn/measure';
import { formatFixed, formatKnown, measuredText } from '../../ui/format';
import { squareCodeOf, type SquareCode } from '../../ui/label/squareCode';
import { burns, burnsNeat } from '../../workshop/burns';
import { allergensIn, allergenWords } from '../../workshop/drinkable/allergensIn';
import { isSmellOnly } from '../../workshop/drinkable/grade';
import { overLines } from '../../workshop/drinkable/overNow';
import { allLabelled, calledOf, labelShareOf, type Labelled } from '../../workshop/thing/labelled';
import { inLabelBasis } from './describeVial';

/** A label's words, its square code, and, should it ever happen, that another record has the same short id. */
export interface LabelOf {
  readonly content: LabelContent;
  readonly code: SquareCode | null;
  readonly shared: boolean;
}

/** The label of a vial, bottle or batch; a strip's says only what stands on a strip. */
export function labelOf(record: Labelled, kind: 'vial' | 'strip'): LabelOf {
  const shortId = shortIdOf(record.id);
  const code = kind === 'vial' ? squareCodeOf(codeTextOf(shortId)) : null;
  const id: LabelSpan = { ...plain(spacedShortId(shortId), 'the short id'), face: 'code' };
  const words = byKind(labels, record);
  const paragraphs = (kind === 'vial' ? [...words.all, [id]] : words.strip).map((spans) =>
    spans.filter(({ text }) => text !== ''),
  );
  return {
    content: {
      paragraphs: paragraphs.filter((spans) => spans.length > 0),
      codeModules: code?.side ?? null,
      flame: kind === 'vial' && words.flame,
      rings: kind === 'vial' && record.kind === 'vial' ? ringsOf(labelShareOf(record)) : 0,
    },
    code,
    shared: foundByShortId(shortId, allLabelled()).length > 1,
  };
}

interface Words {
  all: LabelSpan[][];
  strip: LabelSpan[][];
  flame: boolean;
}

const labels: { readonly [K in LabelledKind]: (record: RecordOf<K>) => Words } = {
  vial: vialWords,
  bottle: bottleWords,
  batch: batchWords,
};

function vialWords(vial: Vial): Words {
  const { tag, bar, limit, fit, name } = headOf(vial);
  const { amount, unit } = inLabelBasis(vial, plus(...vial.contents.map(({ strength }) => strength)));
  const exact = plain(unbroken(measuredText(amount, unit)), 'the exact strength');
  const parts = vial.contents.length > 1 ? `of ${vial.contents.length} materials` : '';
  const carrier = vial.solvent && `in ${vial.solvent.name.replace(/ %/g, '\u00a0%')}`;
  const solvent = plain([parts, carrier].filter(Boolean).join(' '), 'the solvent');
  const made = plain(vial.madeOn && unbroken(`made ${vial.madeOn}`), 'the day it was made');
  return {
    all: [[...tag, exact], bar, [limit], [name], [made, useByOf(vial), fit], [solvent], originOf(vial)],
    strip: [
      [...tag, ...bar],
      [name, made, fit],
    ],
    flame: burns(vial),
  };
}

function bottleWords(bottle: Bottle): Words {
  const { tag, bar, fit, name } = headOf(bottle);
  const opened = plain(bottle.opened ? unbroken(`opened ${bottle.opened}`) : '', 'the day it was opened');
  return {
    all: [tag, bar, [name], [opened, useByOf(bottle), fit], originOf(bottle)],
    strip: [
      [...tag, ...bar],
      [name, fit],
    ],
    flame: burnsNeat(bottle.material),
  };
}

/**
 * A finished drink, which may be over a limit, and then its label says of which. Hazard labels are not for food (Reg. (EC) 1272/2008, Art. 1(5), from memory, not verified), so it has no flame
 * whatever its strength. Its lot is that of the batch; those of its ingredients are found by way of the square code. How
 * long it keeps is not known, so it says no day.
 */
function batchWords(batch: Batch): Words {
  const { tag, bar, limit, fit, name } = headOf(batch);
  const { weighed, code } = batch;
  const { abv, brix, litres } = batch.drink;
  const poured = weighed.filter(({ id, into }) => id === CONCENTRATE && into !== 'concentrate');
  const perLitre = over(plus(...poured.map(({ massG }) => massG)), litres);
  const made = plain(unbroken(`made ${batch.madeOn}`), 'the day it was made');
  const facts = [
    plain(abv.value >= LEAST_SHOWN ? unbroken(`${formatFixed(abv.value, 1)} % vol`) : '', 'the alcohol'),
    plain(unbroken(`${formatKnown(litres)} L`), 'the volume'),
    plain(brix.value >= LEAST_SHOWN ? unbroken(`${formatFixed(brix.value, 1)} °Brix`) : '', 'the sugar'),
    plain(code ? unbroken(`lot ${code}`) : '', 'the lot'),
    plain(poured.length > 0 ? `concentrate ${unbroken(`${formatKnown(perLitre)} g/L`)}` : '', 'the dosage'),
  ];
  const contains = allergenWords(allergensIn(batch).known);
  const allergens = plain(contains && `contains ${contains}`, 'the allergens');
  return {
    all: [tag, bar, [limit], [name], [allergens], [made, fit], facts],
    strip: [
      [...tag, ...bar],
      [name, made, fit],
    ],
    flame: false,
  };
}

const LEAST_SHOWN = 0.05; // % vol and °Brix: less is 0.0 in one decimal

interface Head {
  tag: LabelSpan[];
  bar: LabelSpan[];
  limit: LabelSpan;
  fit: LabelSpan;
  name: LabelSpan;
}

/** Code and strength; a bar where it may only be smelled or is over a limit, and of which; small words where it is fit for drinks; name. */
function headOf(record: Labelled): Head {
  const lines = overLines(record);
  const bar = isSmellOnly(record) ? 'SMELL ONLY' : lines.length > 0 ? 'OVER A LIMIT' : '';
  const more = lines.length > 1 ? ` (and ${lines.length - 1} more)` : ''; // the page and the sheet tell them all
  const { code, strength, name } = calledOf(record);
  const must = { large: true, rank: 0 };
  return {
    tag: [
      { ...must, text: code, face: 'code', what: 'the code' },
      { ...must, text: unbroken(strength), face: 'bold', what: 'the strength' },
    ],
    bar: bar ? [{ text: bar, face: 'badge', large: false, rank: 0, what: bar }] : [],
    limit: { ...plain(lines.length > 0 ? `${lines[0]}${more}` : '', 'the limit'), mayShorten: true },
    fit: plain(bar ? '' : unbroken('Fit for drinks'), 'fit for drinks'),
    name: { ...plain(name, 'the name'), face: 'bold', mayShorten: true },
  };
}

function useByOf({ useBy }: { useBy?: string | undefined }): LabelSpan {
  return plain(useBy ? unbroken(`use by ${useBy}`) : '', 'the use-by day');
}

function originOf({ supplier, lot }: { supplier: string; lot: string }): LabelSpan[] {
  return [plain(supplier, 'the supplier'), plain(lot && unbroken(`lot ${lot}`), 'the lot')];
}

function plain(text: string, what: LabelPart): LabelSpan {
  return { text, face: 'plain', large: false, rank: rankOf(what), what };
}

/** With no-break spaces: belongs on one line, where there is room. */
function unbroken(text: string): string {
  return text.replaceAll(' ', '\u00a0');
}
