import { SMALLEST_LABEL } from '../../core/label/label';
import { changeSettings, shelf } from '../../records/shelf';
import { amount, whole, type Field } from '../../tasks/engine/fields';

/** How labels are asked for: texts as typed and chosen, kept for the next time. */
export type LabelSetUp = Readonly<Record<string, string>>;

const usual: LabelSetUp = {
  size: '30x20',
  ownWidth: '45',
  ownHeight: '25',
  on: 'printer203',
  paper: 'cut',
  left: '8',
  top: '10',
  across: '2',
  down: '0',
  first: '1',
};

/** Whether labels were ever set up. */
export function wasSetUp(): boolean {
  return shelf.settings.value.labels?.['size'] !== undefined || shelf.settings.value.labels?.['on'] !== undefined;
}

/** The size and printer of last time, with the usual where nothing was said. */
export function labelSetUp(): LabelSetUp {
  return { ...usual, ...shelf.settings.value.labels };
}

/** Keeps a choice. */
export function setUpLabel(name: string, text: string): Promise<void> {
  return changeSettings({ labels: { ...shelf.settings.value.labels, [name]: text } });
}

/** Sizes offered, mm wide × high. */
export const labelSizes = [
  { value: '40x12', label: '40 × 12', widthMm: 40, heightMm: 12 },
  { value: '25x15', label: '25 × 15', widthMm: 25, heightMm: 15 },
  { value: '30x20', label: '30 × 20', widthMm: 30, heightMm: 20 },
  { value: '40x30', label: '40 × 30', widthMm: 40, heightMm: 30 },
  { value: '50x25', label: '50 × 25', widthMm: 50, heightMm: 25 },
  { value: '57x32', label: '57 × 32', widthMm: 57, heightMm: 32 },
  { value: 'strip', label: 'Strip', widthMm: 40, heightMm: 8 },
  { value: 'own', label: 'Own', widthMm: 0, heightMm: 0 },
] as const;

/** What labels are printed on; "hand" where there is no printer. The dots of a printer for paper are finer than these. */
export const labelPrinters = [
  { value: 'printer203', label: 'Label printer 203 dpi', dpi: 203, sheet: null },
  { value: 'printer300', label: 'Label printer 300 dpi', dpi: 300, sheet: null },
  { value: 'A4', label: 'A4 sheets', dpi: 300, sheet: { widthMm: 210, heightMm: 297 } },
  { value: 'Letter', label: 'Letter sheets', dpi: 300, sheet: { widthMm: 215.9, heightMm: 279.4 } },
  { value: 'hand', label: 'By hand, with a marker', dpi: 300, sheet: null },
] as const;

const LARGEST = { widthMm: 150, heightMm: 100 }; // our choice

export const ownFields = [
  amount({ name: 'ownWidth', title: 'Wide', unit: 'mm', min: SMALLEST_LABEL.widthMm, max: LARGEST.widthMm }),
  amount({ name: 'ownHeight', title: 'High', unit: 'mm', min: SMALLEST_LABEL.heightMm, max: LARGEST.heightMm }),
] as const;

export const firstField = whole({
  name: 'first',
  title: 'First free place',
  unit: 'place',
  min: 1,
  help: 'Place 1 is at the upper left.',
});

export const sheetFields = [
  amount({ name: 'left', title: 'Left margin', unit: 'mm', min: 0, max: 100 }),
  amount({ name: 'top', title: 'Top margin', unit: 'mm', min: 0, max: 100 }),
  amount({ name: 'across', title: 'Gap across', unit: 'mm', min: 0, max: 50 }),
  amount({ name: 'down', title: 'Gap down', unit: 'mm', min: 0, max: 50 }),
] as const;

/** The set-up in a few words: '30 × 20 mm · Label printer 203 dpi'. */
export function setUpWords(): string {
  const { on, size, ownWidth, ownHeight } = labelSetUp();
  const printer = labelPrinters.find(({ value }) => value === on) ?? labelPrinters[0];
  if (printer.value === 'hand') return printer.label;
  const chosen = labelSizes.find(({ value }) => value === size) ?? labelSizes[2];
  const words =
    chosen.value === 'own'
      ? `${ownWidth} × ${ownHeight} mm`
      : `${chosen.label}${chosen.value === 'strip' ? '' : ' mm'}`;
  return `${words} · ${printer.label}`;
}

/** What a set-up comes to: a size, a printer, and the sheet where there is one. */
export interface LabelJob {
  readonly kind: 'vial' | 'strip';
  readonly widthMm: number;
  readonly heightMm: number;
  readonly dpi: number;
  readonly sheet: {
    readonly widthMm: number;
    readonly heightMm: number;
    /** Null for plain paper that is cut; lines are drawn. */
    readonly marginMm: { left: number; top: number } | null;
    readonly gapMm: { across: number; down: number };
    readonly skip: number;
  } | null;
}

/** The job of a set-up, or one sentence for each field that is in its way. */
export function jobOf(setUp: LabelSetUp): LabelJob | { problems: Record<string, string> } {
  const { dpi, sheet } = labelPrinters.find(({ value }) => value === setUp['on']) ?? labelPrinters[0];
  const chosen = labelSizes.find(({ value }) => value === setUp['size']) ?? labelSizes[2];
  const fields: Field[] = [
    ...(chosen.value === 'own' ? ownFields : []),
    ...(sheet ? [firstField] : []),
    ...(sheet && setUp['paper'] === 'labels' ? sheetFields : []),
  ];
  const problems = fields.flatMap((field) => {
    const answer = field.read(setUp[field.name] ?? '');
    return answer.ok ? [] : [[field.name, answer.why] as const];
  });
  if (problems.length > 0) return { problems: Object.fromEntries(problems) };
  const number = (field: Field<number>) => numberIn(field, setUp);
  const [left, top, across, down] = sheetFields.map(number);
  const plain = setUp['paper'] !== 'labels';
  return {
    kind: chosen.value === 'strip' ? 'strip' : 'vial',
    widthMm: chosen.value === 'own' ? number(ownFields[0]) : chosen.widthMm,
    heightMm: chosen.value === 'own' ? number(ownFields[1]) : chosen.heightMm,
    dpi,
    sheet: sheet && {
      ...sheet,
      marginMm: plain ? null : { left: left!, top: top! },
      gapMm: plain ? { across: 0, down: 0 } : { across: across!, down: down! },
      skip: number(firstField) - 1,
    },
  };
}

function numberIn(field: Field<number>, setUp: LabelSetUp): number {
  const answer = field.read(setUp[field.name] ?? '');
  return answer.ok ? answer.value : 0;
}
