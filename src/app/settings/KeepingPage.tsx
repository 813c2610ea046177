import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { copies, lookThroughCopies, rewriteJournal } from '../../records/journal/journal';
import { sinceBackup } from '../../records/backup/lastBackup';
import { allPhotos, mostPhotoBytes } from '../../records/photos';
import { shelf } from '../../records/shelf';
import { formatCount } from '../../ui/format';
import { BackupPart } from './BackupPart';
import { ErasePart } from './ErasePart';
import { InstallPart } from './InstallPart';
import { backupWords, sizeWords } from '../nav/keepingWords';
import { photosAndSize } from '../photo/photoWords';
import { RestorePart } from './RestorePart';
import { PageHead } from '../nav/PageHead';
import './keeping.css';

/** What is stored, where, how to take it out, and how to erase it: #/keeping. */
export function KeepingPage() {
  const since = useSignal('');
  const look = () => void sinceBackup().then((found) => (since.value = backupWords(found)));
  useEffect(look, [shelf.records.value]);
  return (
    <main class="page keeping">
      <PageHead title="What is kept, and where" />
      <Promises />
      <CopiesPart />
      <InstallPart />
      <section>
        <h2>Backup</h2>
        <p>{since.value}</p>
        <PhotoRoom />
        <BackupPart onDone={look} />
      </section>
      <section>
        <h2>Restore</h2>
        <RestorePart />
      </section>
      <section>
        <h2>Erase</h2>
        <ErasePart />
      </section>
    </main>
  );
}

function Promises() {
  return (
    <ul class="promises">
      <li>
        Everything is stored on this device, and nowhere else. No account, no tracking, no request to any other place.
      </li>
      <li>Each tap is stored before it is shown. A record that cannot be read is kept as it is.</li>
      <li>It is yours: one file takes all of it out, in a form that is written down for others to read.</li>
      <li>Clearing this browser’s data, or removing Minim, erases it. A backup elsewhere is the only help then.</li>
    </ul>
  );
}

/** What photos take, of what a backup has room for. */
function PhotoRoom() {
  const photos = allPhotos();
  if (photos.count === 0) return null;
  return (
    <p>
      {photosAndSize(photos)}; a backup has room for {formatCount(mostPhotoBytes / 1e6)} MB of them.
    </p>
  );
}

/** How the two copies on this device stand. */
function CopiesPart() {
  const { why, possible, mended } = copies.value;
  const busy = useSignal(false);
  const room = useSignal('');
  useEffect(() => void roomWords().then((words) => (room.value = words)), []);
  const work = (task: () => Promise<void>) => async () => {
    busy.value = true;
    await task();
    busy.value = false;
  };
  return (
    <section>
      <h2>Two copies on this device</h2>
      <p role="status">
        {why === '' ? 'The database and the second copy both hold everything. They are compared at every start.' : why}
      </p>
      <p class="quiet">{room.value}</p>
      {mended.length > 0 && (
        <ul class="told">
          {mended.map((words) => (
            <li>{words}</li>
          ))}
        </ul>
      )}
      {possible && (
        <button class="second" disabled={busy.value} onClick={work(why === '' ? lookThroughCopies : rewriteJournal)}>
          {busy.value ? 'One moment…' : why === '' ? 'Check all entries now' : 'Write the second copy again'}
        </button>
      )}
    </section>
  );
}

async function roomWords(): Promise<string> {
  const { usage, quota } = (await navigator.storage?.estimate?.()) ?? {};
  const persisted = await navigator.storage?.persisted?.();
  const size =
    usage && quota ? `It takes ${sizeWords(usage)} of the ${sizeWords(quota)} that this browser allows. ` : '';
  return persisted
    ? `${size}The browser has promised not to clear it by itself.`
    : `${size}The browser may clear it when the device runs out of room: put Minim on the home screen, and back up.`;
}
