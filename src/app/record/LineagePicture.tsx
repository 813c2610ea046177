import { kindWords, type AnyRecord } from '../../records/kind/kinds';
import { parentsOf, type Relative } from '../../records/lineage';
import { letterScale } from '../../ui/plot/pictureRoom';
import { describe } from '../describe/describe';
import { go } from '../nav/route';

const BOX = { wide: 104, high: 44, gapX: 12, gapY: 34 };
const MOST = 5; // boxes in a row; the list below the picture has them all

interface Place {
  readonly record: AnyRecord;
  readonly x: number;
  readonly y: number;
}

/** Rows from the oldest to the newest, the record itself in its own. */
function rowsOf(record: AnyRecord, before: readonly Relative[], after: readonly Relative[]): AnyRecord[][] {
  const rows = new Map<number, AnyRecord[]>([[0, [record]]]);
  const put = (level: number, one: AnyRecord) => rows.set(level, [...(rows.get(level) ?? []), one]);
  for (const { record: one, steps } of before) put(-steps, one);
  for (const { record: one, steps } of after) put(steps, one);
  return [...rows].sort(([a], [b]) => a - b).map(([, row]) => row);
}

function placed(rows: readonly AnyRecord[][], width: number): Place[] {
  return rows.flatMap((row, level) => {
    const shown = row.slice(0, MOST);
    const left = (width - shown.length * (BOX.wide + BOX.gapX) + BOX.gapX) / 2;
    return shown.map((record, i) => ({
      record,
      x: left + i * (BOX.wide + BOX.gapX),
      y: level * (BOX.high + BOX.gapY),
    }));
  });
}

/** The lineage as boxes and lines, oldest on top. Everything in it stands in the lists below too. */
export function LineagePicture({
  record,
  before,
  after,
}: {
  record: AnyRecord;
  before: readonly Relative[];
  after: readonly Relative[];
}) {
  const rows = rowsOf(record, before, after);
  const widest = Math.min(MOST, Math.max(...rows.map((row) => row.length)));
  const width = widest * (BOX.wide + BOX.gapX) - BOX.gapX;
  const height = rows.length * (BOX.high + BOX.gapY) - BOX.gapY;
  const places = placed(rows, width);
  const hidden = rows.reduce((sum, row) => sum + Math.max(0, row.length - MOST), 0);
  const words = `Lineage of ${describe(record).title}: made from ${before.length}, went into ${after.length}.`;
  if (before.length + after.length === 0) return null;
  return (
    <figure class="lineage" tabIndex={0} aria-label="Lineage" ref={showMiddle}>
      <svg
        viewBox={`-2 -2 ${width + 4} ${height + 4}`}
        role="img"
        aria-label={words}
        style={{ minWidth: `${width * letterScale()}px` }}
      >
        {places.map((place) => (
          <Lines place={place} places={places} />
        ))}
        {places.map((place) => (
          <Box place={place} here={place.record.id === record.id} />
        ))}
      </svg>
      {hidden > 0 && <figcaption class="quiet">{hidden} more in the lists below.</figcaption>}
    </figure>
  );
}

/** Where it is wider than the screen its middle is shown, since there the record itself stands. */
function showMiddle(figure: HTMLElement | null): void {
  if (figure) figure.scrollLeft = (figure.scrollWidth - figure.clientWidth) / 2;
}

function Lines({ place, places }: { place: Place; places: readonly Place[] }) {
  const parents = parentsOf(place.record.id).flatMap((id) => places.find((one) => one.record.id === id) ?? []);
  return (
    <>
      {parents.map((parent) => {
        const [x1, y1, x2, y2] = [parent.x + BOX.wide / 2, parent.y + BOX.high, place.x + BOX.wide / 2, place.y];
        const bend = Math.max(BOX.gapY / 2, (y2 - y1) / 2);
        const far = y2 - y1 > BOX.gapY; // passes behind a row between
        return (
          <path
            class={far ? 'line far' : 'line'}
            d={`M${x1} ${y1}C${x1} ${y1 + bend} ${x2} ${y2 - bend} ${x2} ${y2}`}
          />
        );
      })}
    </>
  );
}

function Box({ place: { record, x, y }, here }: { place: Place; here: boolean }) {
  const { title, code } = describe(record);
  return (
    <g class={here ? 'box here' : 'box'} onClick={() => go(['record', record.id])}>
      <rect x={x} y={y} width={BOX.wide} height={BOX.high} rx="9" />
      <text x={x + BOX.wide / 2} y={y + 18} class="name">
        {cut(code || title, 13)}
      </text>
      <text x={x + BOX.wide / 2} y={y + 34} class="kind">
        {cut(`${kindWords(record)} ${lotOf(record)}`.trim(), 18)}
      </text>
    </g>
  );
}

function lotOf(record: AnyRecord): string {
  return 'lot' in record && record.lot ? record.lot : '';
}

function cut(text: string, most: number): string {
  return text.length > most ? `${text.slice(0, most - 1)}…` : text;
}
