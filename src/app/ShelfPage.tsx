import type { AnyRecord } from '../records/kinds';
import { list, shelf } from '../records/shelf';
import { describe } from './describe';
import { LabelsButton, ScanButton } from './LabelLinks';
import { go } from './route';

const sections = [
  ['vial', 'Vials'],
  ['bottle', 'Bottles'],
  ['dropper', 'Droppers'],
  ['calibration', 'Calibrations'],
  ['formula', 'Formulas'],
  ['layering', 'Layerings'],
  ['tasting', 'Drinks'],
  ['solvent', 'Own solvents'],
] as const;

/** What is owned, by kind. */
export function ShelfPage() {
  const filled = sections
    .map(([kind, words]) => [words, list(kind) as AnyRecord[]] as const)
    .filter(([, found]) => found.length > 0);
  return (
    <main class="page">
      <header class="top">
        <h1>Shelf</h1>
        <LabelsButton />
        <ScanButton />
      </header>
      {filled.length === 0 && shelf.loaded.value && (
        <p class="quiet">
          Nothing here yet. Bottles, vials and droppers come onto the Shelf as you use them: begin with <b>Dilute</b> on
          the Bench.
        </p>
      )}
      {filled.map(([words, records]) => (
        <section>
          <h2>{words}</h2>
          <ul class="list">
            {records.map((record) => (
              <Entry record={record} />
            ))}
          </ul>
        </section>
      ))}
      <UnreadableList />
    </main>
  );
}

function Entry({ record }: { record: AnyRecord }) {
  const { title, line, code, grade } = describe(record);
  return (
    <li>
      <button class="entry" onClick={() => go(['record', record.id])}>
        {code && <span class="code">{code}</span>}
        <b>{title}</b>
        <span>
          {line}
          {grade === 'smell only' && <em class="smell-only"> smell only</em>}
        </span>
      </button>
    </li>
  );
}

function UnreadableList() {
  const unread = shelf.unreadable.value;
  if (unread.length === 0) return null;
  return (
    <section>
      <h2>Could not be read</h2>
      <p class="quiet">Kept untouched, with the reason; nothing of it is lost.</p>
      <ul class="list">
        {unread.map(({ raw, why }) => (
          <li class="entry">
            <b>
              {raw.kind} {raw.id}
            </b>
            <span>{why}</span>
          </li>
        ))}
      </ul>
    </section>
  );
}
