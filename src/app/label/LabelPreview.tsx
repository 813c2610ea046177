import { useSignal } from '@preact/signals';
import { EASY_TEXT } from '../../core/label/label';
import { formatPlain } from '../../ui/format';
import { Label } from '../../ui/label/Label';
import { tagOf } from '../../workshop/thing/labelled';
import { pageRoom } from '../../ui/plot/pictureRoom';
import type { ReadyLabel } from './readyLabel';
import { labelSetUp, setUpLabel } from './labelSetUp';

const X_HEIGHT = 0.5; // letters without tails over text size (Atkinson Hyperlegible Next, measured)
const BAR = 40; // mm, shown beside a ruler
const PHONE = 160 / 25.4; // CSS pixels per mm: a phone's usual 160 to the inch
const DESK = 96 / 25.4; // CSS pixels per mm by definition, about right at a desk

/** CSS pixels to a millimetre of this screen: matched by the person, else the usual of its kind. */
function pixelsPerMm(): number {
  const matched = Number(labelSetUp()['pixelsPerMm']);
  return matched > 0 ? matched : matchMedia('(pointer: coarse)').matches ? PHONE : DESK;
}

/** One label in its true size, what had to be left out of it and of the others, and the way to the next. */
export function LabelPreview({ labels }: { labels: readonly ReadyLabel[] }) {
  const at = useSignal(0);
  const shown = labels[Math.min(at.value, labels.length - 1)]!;
  const { widthMm } = shown.layout;
  const room = pageRoom() - 4; // the frame of the paper
  const wanted = widthMm * pixelsPerMm();
  return (
    <section class="label-preview" aria-label="Preview">
      <div class="paper">
        <Label layout={shown.layout} code={shown.code} name={labelName(shown)} width={`${Math.min(wanted, room)}px`} />
      </div>
      {labels.length > 1 && <Turn at={at.value} of={labels.length} onTurn={(to) => (at.value = to)} />}
      {wanted > room && <p class="quiet">Shown smaller than it is: the screen is too narrow.</p>}
      <LeftOut labels={labels} />
      <p class="quiet">{smallPrint(shown)}</p>
    </section>
  );
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

/** Nothing is cut off; what is left out is said for every label. */
function LeftOut({ labels }: { labels: readonly ReadyLabel[] }) {
  const short = new Map<string, string[]>();
  for (const { layout, record } of labels)
    if (layout.leftOut.length > 0) {
      const what = layout.leftOut.join(', ');
      short.set(what, [...(short.get(what) ?? []), tagOf(record)]);
    }
  const shared = labels.filter((label) => label.shared);
  if (short.size === 0 && shared.length === 0) return null;
  return (
    <div class="trouble" role="alert">
      {[...short].map(([what, codes]) => (
        <p>
          {labels.length > 1 && <b>{codes.join(', ')}: </b>}
          No room for {what}. Choose a larger label.
        </p>
      ))}
      {shared.map(({ title }) => (
        <p>
          <b>{title}: </b>another label on this Shelf has the same short id. Write the code on it by hand too.
        </p>
      ))}
    </div>
  );
}

function smallPrint({ layout }: ReadyLabel): string {
  const small = layout.textMm < EASY_TEXT - 1e-9 || (layout.flame !== null && layout.flame.side < 10);
  const sold = layout.flame ? '1.2 mm letters and a 10 mm flame' : '1.2 mm letters';
  return [
    `Letters ${formatPlain(layout.textMm * X_HEIGHT, 2)} mm high`,
    layout.code && `QR ${layout.code.dots} dots to a module (${formatPlain(layout.code.module, 2)} mm)`,
    layout.flame && `flame ${formatPlain(layout.flame.side)} mm`,
  ]
    .filter(Boolean)
    .join(', ')
    .concat('.', small ? ` Fine for your own bench; what is sold needs ${sold} (CLP).` : '');
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
