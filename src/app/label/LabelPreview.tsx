import { useSignal } from '@preact/signals';
import { EASY_TEXT, type LabelLayout } from '../../core/label/label';
import { LABEL_ORDER, type LabelPart } from '../../core/label/labelOrder';
import { CAP_HEIGHT } from '../../core/label/labelText';
import { isOf } from '../../records/kind/kinds';
import { formatPlain } from '../../ui/format';
import { Label } from '../../ui/label/Label';
import { tagOf } from '../../workshop/thing/labelled';
import { pageRoom } from '../../ui/plot/pictureRoom';
import type { ReadyLabel } from './readyLabel';
import { labelSetUp, setUpLabel } from './labelSetUp';

const BAR = 40; // mm, shown beside a ruler
const PHONE = 160 / 25.4; // CSS pixels per mm: a phone's usual 160 to the inch
const DESK = 96 / 25.4; // CSS pixels per mm by definition, about right at a desk

/** CSS pixels to a millimetre of this screen: matched by the person, else the usual of its kind. */
function pixelsPerMm(): number {
  const matched = Number(labelSetUp()['pixelsPerMm']);
  return matched > 0 ? matched : matchMedia('(pointer: coarse)').matches ? PHONE : DESK;
}

interface Props {
  labels: readonly ReadyLabel[];
  /** The printer has black only. */
  black: boolean;
}

/** One label, as large as the screen lets it be or in its true size; what had to be left out of it and of the others, and the way to the next. */
export function LabelPreview({ labels, black }: Props) {
  const at = useSignal(0);
  const trueSize = useSignal(false);
  const shown = labels[Math.min(at.value, labels.length - 1)]!;
  const { widthMm } = shown.layout;
  const room = pageRoom() - 4; // the frame of the paper
  const own = widthMm * pixelsPerMm();
  const width = Math.min(room, trueSize.value ? own : LARGEST_TIMES * own);
  return (
    <section class="label-preview" aria-label="Preview">
      <div class="paper">
        <Label layout={shown.layout} code={shown.code} name={labelName(shown)} width={`${width}px`} black={black} />
      </div>
      {labels.length > 1 && <Turn at={at.value} of={labels.length} onTurn={(to) => (at.value = to)} />}
      <div class="size-line">
        <span class="quiet">{sizeWords(width / own)}</span>
        {room > own && (
          <button class="second" onClick={() => (trueSize.value = !trueSize.value)}>
            {trueSize.value ? 'Enlarge' : 'True size'}
          </button>
        )}
      </div>
      <LeftOut labels={labels} />
      <p class="quiet">{smallPrint(shown)}</p>
    </section>
  );
}

const LARGEST_TIMES = 3;

function sizeWords(times: number): string {
  if (times < 0.99) return 'Smaller than it is: the screen is too narrow';
  return times < 1.01 ? 'True size' : `${formatPlain(times, 2)} times its size`;
}

function Turn({ at, of, onTurn }: { at: number; of: number; onTurn: (to: number) => void }) {
  return (
    <div class="row turn">
      <button class="second" onClick={() => onTurn((at + of - 1) % of)} aria-label="Label before">
        ‹
      </button>
      <span>
        {at + 1} of {of}
      </span>
      <button class="second" onClick={() => onTurn((at + 1) % of)} aria-label="Next label">
        ›
      </button>
    </div>
  );
}

/** Nothing is cut off; what is left out is said for every label: loudly, unless the square code leads to it. */
function LeftOut({ labels }: { labels: readonly ReadyLabel[] }) {
  const short = byWhat(labels, ({ layout }) => layout.leftOut.filter((what) => !isInCode(what, layout)));
  const inCode = byWhat(labels, ({ layout }) => layout.leftOut.filter((what) => isInCode(what, layout)));
  const shared = labels.filter((label) => label.shared);
  return (
    <>
      {short.size + shared.length > 0 && (
        <div class="trouble" role="alert">
          <Lines of={short} said="No room for" many={labels.length > 1} />
          {shared.map(({ title }) => (
            <p>
              <b>{title}: </b>another label on this Shelf has the same short id. Write the code on it by hand too.
            </p>
          ))}
        </div>
      )}
      <div class="quiet">
        <Lines of={inCode} said="In the square code only:" many={labels.length > 1} />
      </div>
    </>
  );
}

function isInCode(what: string, { code }: LabelLayout): boolean {
  const rank = LABEL_ORDER.indexOf(what as LabelPart);
  return code !== null && rank >= LABEL_ORDER.indexOf('the lot');
}

/** The tags of the labels that lack the same things, by what they lack in words. */
function byWhat(labels: readonly ReadyLabel[], lacks: (label: ReadyLabel) => string[]): Map<string, string[]> {
  const groups = new Map<string, string[]>();
  for (const label of labels) {
    const what = lacks(label).join(', ');
    if (what !== '') groups.set(what, [...(groups.get(what) ?? []), tagOf(label.record)]);
  }
  return groups;
}

function Lines({ of, said, many }: { of: Map<string, string[]>; said: string; many: boolean }) {
  return (
    <>
      {[...of].map(([what, codes]) => (
        <p>
          {many && <b>{codes.join(', ')}: </b>}
          {said} {what}.
        </p>
      ))}
    </>
  );
}

/** How large what is on it is; what is sold and is not a finished drink has its least sizes by CLP. */
function smallPrint({ layout, record }: ReadyLabel): string {
  const small = layout.textMm < EASY_TEXT - 1e-9 || (layout.flame !== null && layout.flame.side < 10);
  const sold = layout.flame ? 'small letters of 1.2 mm and a 10 mm flame' : 'small letters of 1.2 mm';
  return [
    `Capitals ${formatPlain(layout.headMm * CAP_HEIGHT, 2)} mm, and ${formatPlain(layout.textMm * CAP_HEIGHT, 2)} mm in the text`,
    layout.code && `QR ${layout.code.dots} dots to a module (${formatPlain(layout.code.module, 2)} mm)`,
    layout.flame && `flame ${formatPlain(layout.flame.side)} mm`,
  ]
    .filter(Boolean)
    .join(', ')
    .concat('.', small && !isOf('batch', record) ? ` Fine for your own bench; what is sold needs ${sold} (CLP).` : '');
}

function labelName({ title, layout }: ReadyLabel): string {
  const words = layout.texts.map(({ text }) => text).join(' ');
  return `Label of ${title}: ${words}${layout.flame ? '; flame: flammable' : ''}${layout.code ? '; QR code' : ''}`;
}

/** A bar to lay a ruler on, so that the preview is as large as the label will be. */
export function ScreenMatch() {
  const now = pixelsPerMm();
  return (
    <details class="match">
      <summary>Is the preview true to size?</summary>
      <p class="quiet">Lay a ruler on the bar and move the slider until it is {BAR} mm long.</p>
      <div class="bar" style={{ width: `${BAR * now}px` }} aria-hidden="true" />
      <input
        type="range"
        min="3"
        max="8"
        step="0.02"
        value={now}
        aria-label={`Length of the bar that should be ${BAR} mm`}
        onChange={(event) => void setUpLabel('pixelsPerMm', event.currentTarget.value)}
      />
    </details>
  );
}
