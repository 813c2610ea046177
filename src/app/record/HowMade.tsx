import { useSignal } from '@preact/signals';
import { isOf, type AnyRecord } from '../../records/kind/kinds';
import { runWithEvents, shelf } from '../../records/shelf';
import { useFault } from '../../ui/fault/useFault';
import { formatMoment, formatTime } from '../../ui/format';
import { doNext } from './doNext';
import type { Next } from './nexts';
import { go } from '../nav/route';
import { StoryLines } from '../describe/RunStory';

type Found = Awaited<ReturnType<typeof runWithEvents>>;

/** How a thing was made, or how it went: step by step with its times, folded away until it is asked for. */
export function HowMade({ record, again }: { record: AnyRecord; again: Next | null }) {
  const found = useSignal<Found | undefined>(undefined);
  const fault = useFault();
  const run = runOf(record);
  if (run === null) return null;
  const open = (isOpen: boolean) => {
    if (isOpen && found.value === undefined) runWithEvents(run).then((there) => (found.value = there), fault);
  };
  return (
    <>
      <details class="how-made" onToggle={(event) => open(event.currentTarget.open)}>
        <summary>
          <b>{wentWords(record)}</b> <span>{whenWords(record)}</span>
        </summary>
        {found.value === null && <p class="quiet">Its steps are not on this phone.</p>}
        {found.value && (
          <>
            <StoryLines run={found.value.run} events={found.value.events} />
            <button class="second" onClick={() => go(['record', run, 'paper'])}>
              Print these steps, or CSV
            </button>
          </>
        )}
      </details>
      {again && (
        <button class="second" onClick={() => doNext(again)}>
          {again.words}
        </button>
      )}
    </>
  );
}

/** The run that a record came out of; null where nothing was made: what was bought, and what was only written down. */
export function runOf(record: AnyRecord): string | null {
  if (['bottle', 'supply', 'material', 'dropper', 'scale', 'vessel', 'solvent', 'base'].includes(record.kind))
    return null;
  const made = record.from.at(-1);
  const known = made && shelf.records.value.get(made); // a run is held here only since it ended in this window
  return made && (!known || isOf('run', known)) ? made : null;
}

function wentWords({ kind }: AnyRecord): string {
  return kind === 'layering' || kind === 'proportions' || kind === 'test' || kind === 'tasting'
    ? 'How it went'
    : 'How it was made';
}

function whenWords({ done, made }: AnyRecord): string {
  if (!done) return formatMoment(made);
  const end = formatTime(done.to);
  return formatTime(done.from) === end ? formatMoment(done.from) : `${formatMoment(done.from)} to ${end}`;
}
