import { kindWords, type AnyRecord } from '../../records/kind/kinds';
import { parentsOf, type Arrow, type Relative } from '../../records/lineage';
import { letterScale } from '../../ui/plot/pictureRoom';
import { describe } from '../describe/describe';
import { go } from '../nav/route';
import type { Kin } from './relatives';

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

/** The lineage as boxes and arrows, oldest on top: solid for what is in it, dashed for what led to it. Everything in it stands in the lists below too. */
export function LineagePicture({
  record,
  before,
  after,
}: {
  record: AnyRecord;
  before: readonly Kin[];
  after: readonly Kin[];
}) {
  const rows = rowsOf(record, before, after);
  const widest = Math.min(MOST, Math.max(...rows.map((row) => row.length)));
  const width = widest * (BOX.wide + BOX.gapX) - BOX.gapX;
  const height = rows.length * (BOX.high + BOX.gapY) - BOX.gapY;
  const places = placed(rows, width);
  const hidden = rows.reduce((sum, row) => sum + Math.max(0, row.length - MOST), 0);
  const count = (kin: readonly Kin[], arrow: Arrow) => kin.filter((one) => one.arrow === arrow).length;
  const words = `Lineage of ${describe(record).title}: ${count(before, 'is in it')} in it, ${count(before, 'led to it')} led to it; it is in ${count(after, 'is in it')} and led to ${count(after, 'led to it')}.`;
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
      <figcaption class="quiet">
        <Key arrow="is in it" /> solid: is in it. <Key arrow="led to it" /> dashed: led to it, and is not in it.
        {hidden > 0 && ` ${hidden} more in the lists below.`}
      </figcaption>
    </figure>
  );
}

/** Where it is wider than the screen its middle is shown, since there the record itself stands. */
function showMiddle(figure: HTMLElement | null): void {
  if (figure) figure.scrollLeft = (figure.scrollWidth - figure.clientWidth) / 2;
}

/** A piece of the line of an arrow, for the words that explain it. */
function Key({ arrow }: { arrow: Arrow }) {
  return (
    <svg class="key" viewBox="0 0 28 8" aria-hidden="true">
      <path class={lineClass(arrow)} d="M1 4H27" />
    </svg>
  );
}

const lineClass = (arrow: Arrow) => (arrow === 'is in it' ? 'line' : 'led');

function Lines({ place, places }: { place: Place; places: readonly Place[] }) {
  return (
    <>
      {(['led to it', 'is in it'] as const).map((arrow) =>
        parentsOf(place.record.id, arrow).map((id) => {
          const parent = places.find((one) => one.record.id === id);
          return parent && <Line arrow={arrow} from={parent} to={place} />;
        }),
      )}
    </>
  );
}

function Line({ arrow, from, to }: { arrow: Arrow; from: Place; to: Place }) {
  const [x1, y1, x2, y2] = [from.x + BOX.wide / 2, from.y + BOX.high, to.x + BOX.wide / 2, to.y];
  const bend = Math.max(BOX.gapY / 2, (y2 - y1) / 2);
  const far = y2 - y1 > BOX.gapY ? ' far' : ''; // passes behind a row between
  return (
    <>
      <path class={lineClass(arrow) + far} d={`M${x1} ${y1}C${x1} ${y1 + bend} ${x2} ${y2 - bend} ${x2} ${y2 - 4}`} />
      <path class="head" d={`M${x2 - 4} ${y2 - 7}L${x2} ${y2}L${x2 + 4} ${y2 - 7}z`} />
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
