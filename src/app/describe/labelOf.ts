import type { LabelContent, LabelSpan } from '../../core/label/labelContent';
import { CONCENTRATE } from '../../core/drink/batchPlan';
import { over, plus } from '../../core/number/measured';
import type { Batch } from '../../records/kind/batch';
import { byKind, type LabelledKind, type RecordOf } from '../../records/kind/kinds';
import type { Bottle } from '../../records/kind/material';
import { codeTextOf, foundByShortId, shortIdOf, spacedShortId } from '../../records/kind/shortId';
import type { Vial } from '../../records/kind/vial';
import { burns, burnsDrink, burnsNeat } from '../../workshop/burns';
import { isSmellOnly } from '../../workshop/drinkable/grade';
import { overLines } from '../../workshop/drinkable/overNow';
import { measuredText } from '../../ui/format';
import { squareCodeOf, type SquareCode } from '../../ui/label/squareCode';
import { inLabelBasis } from './describeVial';
import { allLabelled, calledOf, type Labelled } from '../../workshop/thing/labelled';

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
  const id: LabelSpan = { ...plain(spacedShortId(shortId), 'the short id', 3), face: 'code', scale: 0.9 };
  const words = byKind(labels, record);
  const paragraphs = (kind === 'vial' ? [...words.all, [id]] : words.strip).map((spans) =>
    spans.filter(({ text }) => text !== ''),
  );
  return {
    content: {
      paragraphs: paragraphs.filter((spans) => spans.length > 0),
      codeModules: code?.side ?? null,
      flame: kind === 'vial' && words.flame,
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
  const lines = overLines(vial);
  const head = headOf(vial, badgeOf(isSmellOnly(vial), lines));
  const { amount, unit } = inLabelBasis(vial, plus(...vial.contents.map(({ strength }) => strength)));
  const strength: LabelSpan = { ...plain(unbroken(measuredText(amount, unit)), 'the exact strength', 2), face: 'bold' };
  const parts = vial.contents.length > 1 ? `of ${vial.contents.length} materials` : '';
  const thinner = vial.solvent && `in ${vial.solvent.name.replace(/ %/g, '\u00a0%')}`;
  const solvent = plain([parts, thinner].filter(Boolean).join(' '), 'the solvent', 5);
  const made = plain(vial.madeOn && unbroken(`made ${vial.madeOn}`), 'the day it was made', 6);
  const useBy = plain(vial.useBy && unbroken(`use by ${vial.useBy}`), 'the use-by day', 4);
  return {
    all: [...head, overSpans(lines), [strength, solvent], [made, useBy], originOf(vial)],
    strip: stripOf(head, [strength, made]),
    flame: burns(vial),
  };
}

function bottleWords(bottle: Bottle): Words {
  const head = headOf(bottle, badgeOf(isSmellOnly(bottle), []));
  const opened = plain(bottle.opened ? unbroken(`opened ${bottle.opened}`) : '', 'the day it was opened', 6);
  const useBy = plain(bottle.useBy ? unbroken(`use by ${bottle.useBy}`) : '', 'the use-by day', 4);
  return {
    all: [...head, [opened, useBy], originOf(bottle)],
    strip: stripOf(head, []),
    flame: burnsNeat(bottle.material),
  };
}

/** A batch may be over a limit, and then its label says of which. How long it keeps is not known, so it says no day. */
function batchWords(batch: Batch): Words {
  const lines = overLines(batch);
  const head = headOf(batch, badgeOf(isSmellOnly(batch), lines));
  const { weighed, drink } = batch;
  const poured = weighed.filter(({ id, into }) => id === CONCENTRATE && into !== 'concentrate');
  const perLitre = over(plus(...poured.map(({ massG }) => massG)), drink.litres);
  const dosage = plain(
    poured.length > 0 ? `concentrate ${unbroken(measuredText(perLitre, 'g/L'))}` : '',
    'the dosage',
    4,
  );
  const made = plain(unbroken(`made ${batch.madeOn}`), 'the day it was made', 2);
  const litres = plain(unbroken(measuredText(drink.litres, 'L')), 'the volume', 5);
  const lots = [...new Set(weighed.map(({ lot }) => lot))].filter(Boolean);
  return {
    all: [...head, overSpans(lines), [made, litres], [dosage], [plain(lots.map(unbroken).join('; '), 'the lots', 7)]],
    strip: stripOf(head, [made]),
    flame: burnsDrink(drink),
  };
}

const LARGE = 1.5; // size of code and strength over that of the text

type Head = [[code: LabelSpan, strength: LabelSpan, grade: LabelSpan], [name: LabelSpan]];

type Badge = 'SMELL ONLY' | 'OVER A LIMIT';

/** What a label says in white on black in place of "fit for drinks". */
function badgeOf(smellOnly: boolean, lines: readonly string[]): Badge | null {
  if (smellOnly) return 'SMELL ONLY';
  return lines.length > 0 ? 'OVER A LIMIT' : null;
}

/** The first limit that it is over; the page and the sheet tell them all. */
function overSpans(lines: readonly string[]): LabelSpan[] {
  const more = lines.length > 1 ? ` (and ${lines.length - 1} more)` : '';
  return [plain(lines.length > 0 ? `${lines[0]}${more}` : '', 'the limit', 1)];
}

/** Code, strength and grade, then the name. What may not go into a drink says so in white on black. */
function headOf(record: Labelled, badge: Badge | null): Head {
  const called = calledOf(record);
  const code: LabelSpan = { text: called.code, face: 'code', scale: LARGE, rank: 0, what: 'the code' };
  const strength: LabelSpan = { ...code, text: unbroken(called.strength), face: 'bold', what: 'the strength' };
  const grade: LabelSpan = badge
    ? { text: badge, face: 'badge', scale: 1, rank: 0, what: badge }
    : plain('fit\u00a0for\u00a0drinks', 'fit for drinks', 1);
  return [[code, strength, grade], [{ ...plain(called.name, 'the name', 1), face: 'bold' }]];
}

/** A strip has room for two lines: which one it is, and what it holds. */
function stripOf([[code, strength, grade], [name]]: Head, more: LabelSpan[]): LabelSpan[][] {
  return grade.face === 'badge'
    ? [[code, strength, grade, name], more]
    : [
        [code, strength, name],
        [...more, grade],
      ];
}

function originOf({ supplier, lot }: { supplier: string; lot: string }): LabelSpan[] {
  return [plain(supplier, 'the supplier', 8), plain(lot && unbroken(`lot ${lot}`), 'the lot', 7)];
}

function plain(text: string, what: string, rank: number): LabelSpan {
  return { text, face: 'plain', scale: 1, rank, what };
}

/** With no-break spaces: belongs on one line, where there is room. */
function unbroken(text: string): string {
  return text.replaceAll(' ', '\u00a0');
}
