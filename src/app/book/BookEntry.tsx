import { isLabelled, isOf, kindWords, type AnyRecord } from '../../records/kind/kinds';
import { endOf } from '../../records/endedRuns';
import type { Run } from '../../records/kind/run';
import { photosOf } from '../../records/photos';
import { tasks } from '../../tasks';
import { canBeMadeAgain } from '../../tasks/shared/repeat';
import { book, layer, shelf as bottles } from '../../ui/drawn/firstIcons';
import { Icon } from '../../ui/drawn/Icon';
import { Boundary } from '../../ui/fault/Boundary';
import { faultText } from '../../ui/fault/FaultNotice';
import { formatTime } from '../../ui/format';
import { labelTagOf } from '../../workshop/thing/labelled';
import { keptOf } from '../describe/bookEntries';
import { verdictText } from '../describe/describeLayering';
import { describe } from '../describe/describe';
import { useName } from '../describe/wentIn';
import { go } from '../nav/route';
import { photoAlt } from '../photo/photoWords';
import { Picture } from '../photo/Picture';
import { isBought } from '../record/nexts';
import { ownWords } from '../record/ownWords';

/** One page of the Book: what was made, in drops or grams, from which lots, the person's own words, photos, and the way to make it again. */
export function BookEntry({ run }: { run: Run }) {
  return (
    <li class="page-of-book">
      <Boundary of={run} otherwise={(error) => <Broken run={run} error={error} />}>
        <Written run={run} />
      </Boundary>
    </li>
  );
}

function Broken({ run, error }: { run: Run; error: unknown }) {
  return (
    <button class="entry" onClick={() => go(['record', run.id])}>
      <b>{run.title}</b>
      <span>
        This entry cannot be shown; it is kept as it is.
        <small>{faultText(error)}</small>
      </span>
    </button>
  );
}

function Written({ run }: { run: Run }) {
  const kept = keptOf(run);
  const first = kept.find(({ kind }) => kind === 'calibration') ?? kept[0];
  const { title, fault } = first ? describe(first) : { title: run.title, fault: undefined };
  if (fault) throw fault.error;
  const own = first ? ownWords(first) : [];
  const open = first?.id ?? run.id;
  return (
    <>
      <header>
        <Icon
          of={
            tasks.find(({ id }) => id === run.task)?.icon ??
            (!first ? book : first.kind === 'proportions' ? layer : bottles)
          }
        />
        <h3>{kept.length > 1 && first && isOf('vial', first) ? run.title : title}</h3>
        <time dateTime={endOf(run)}>{formatTime(endOf(run))}</time>
      </header>
      {run.discarded && <p>Discarded: it can be resumed from its page.</p>}
      {first && <What first={first} kept={kept} />}
      {own.length > 0 && <p class="own">{own.join(' · ')}</p>}
      <Thumbs ids={[run.id, ...run.kept]} of={first ?? run} />
      <div class="ways">
        {first && !isBought(first) && canBeMadeAgain(first) && (
          <button onClick={() => go(['record', first.id, 'again'])}>
            Make exactly this<span class="unseen">: {title}</span>
          </button>
        )}
        <button class="open" onClick={() => go(['record', open])}>
          Open<span class="unseen"> {title}</span>
        </button>
      </div>
    </>
  );
}

/** What was made, by what is written on it; what went in, in drops or grams with code and strength; and the lots. */
function What({ first, kept }: { first: AnyRecord; kept: readonly AnyRecord[] }) {
  const { did, line } = describe(first);
  const tags = kept.flatMap((record) => (isLabelled(record) && !isBought(record) ? [labelTagOf(record)] : []));
  const lots = lotsOf(first);
  return (
    <>
      {tags.length > 0 && <p class="tags">{tags.join(' · ')}</p>}
      <p class={did ? 'did' : undefined}>{did ?? lineOf(first, line)}</p>
      {(lots || first.demo) && <p class="quiet">{[lots, first.demo && 'demo'].filter(Boolean).join(' · ')}</p>}
    </>
  );
}

/** What a record says of itself in a list, without what is beside it here. */
function lineOf(record: AnyRecord, line: string): string {
  if (isOf('layering', record)) return verdictText(record.verdict.decision) || 'no verdict';
  return isBought(record) ? [kindWords(record), line].filter(Boolean).join(': ') : line;
}

/** 'ethanol 96 % vol, lot E-5512; lot R-09': each lot once, by the name of what was not counted in drops. */
function lotsOf(record: AnyRecord): string {
  const uses = 'uses' in record ? record.uses.filter(({ lot }) => lot) : [];
  const lots = uses.map((use) =>
    use.drops === undefined && !use.code ? `${useName(use)}, lot ${use.lot}` : `lot ${use.lot}`,
  );
  return [...new Set(lots)].join('; ');
}

const FEW = 4; // thumbnails in a row; the rest are on its page

function Thumbs({ ids, of }: { ids: readonly string[]; of: AnyRecord }) {
  const photos = photosOf(...ids);
  if (photos.length === 0) return null;
  return (
    <ul class="photo-list">
      {photos.slice(0, FEW).map((photo) => (
        <li key={photo.id}>
          <button onClick={() => go(['record', photo.of, 'photo', photo.id])}>
            <Picture photo={photo} alt={photoAlt(of, photo)} />
          </button>
        </li>
      ))}
    </ul>
  );
}
