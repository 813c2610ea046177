import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { copies } from '../../records/journal/journal';
import { isBackupDue, sinceBackup } from '../../records/backup/lastBackup';
import { shelf, whenLoaded } from '../../records/shelf';
import { backupWords } from '../nav/keepingWords';
import { go } from '../nav/route';
import { folderAsks } from '../pairing/folderAsks';
import '../settings/keeping.css';
import { whyGone } from '../../ui/codeGone';
import { formatDay } from '../../ui/format';

let before = ''; // what was said of the backup when the Bench was left

/** On the Bench: one calm line when something about keeping deserves a look; else nothing. */
export function KeepingNotice() {
  const due = useSignal(before);
  const seen = useSignal('');
  const recordsSeen = shelf.records.value;
  useEffect(() => void lookForBackup().then((words) => (due.value = before = words)), [recordsSeen]);
  const { why, refilled } = copies.value;
  const lost = shelf.lost.value;
  if (lost)
    return (
      <Line
        words={`Nothing is left here of what was kept until ${formatDay(lost.on)}: this browser’s data was cleared. A backup brings it back.`}
        button="Restore"
      />
    );
  if (refilled !== seen.value) return <Line words={refilled} button="Good" onTap={() => (seen.value = refilled)} />;
  if (why !== '') return <Line words={why} button="More" />;
  if (folderAsks.value !== '') return <FolderLine name={folderAsks.value} />;
  if (due.value !== '') return <BackupLine due={due.value} />;
  return null;
}

/** One tap asks the browser for the shared folder again. */
function FolderLine({ name }: { name: string }) {
  const allow = async () => (await import('../pairing/sharedFolder')).allowFolder();
  return (
    <Line
      words={`The folder “${name}” that other devices share must be allowed again.`}
      button="Allow it"
      onTap={() => void allow()}
    />
  );
}

/** A backup is due: one tap makes it, and how it went takes the place of what was due. Locking it is on the page behind More. */
function BackupLine({ due }: { due: string }) {
  const went = useSignal('');
  const backUp = async () => {
    went.value = 'One moment…';
    went.value = await import('../keeping/giveBackup').then(({ backUpNow }) => backUpNow(), whyGone);
  };
  return (
    <div class="keeping-line">
      <span role="status">{went.value || due}</span>
      {went.value === '' && (
        <button class="second" onClick={() => void backUp()}>
          Back up
        </button>
      )}
      <button class="second" onClick={() => go(['keeping'])}>
        More
      </button>
    </div>
  );
}

async function lookForBackup(): Promise<string> {
  await whenLoaded;
  if ([...shelf.records.value.values()].some((record) => record.demo)) return ''; // the demo is no one's work
  const since = await sinceBackup();
  return isBackupDue(since) ? backupWords(since) : '';
}

function Line({ words, button, onTap = () => go(['keeping']) }: { words: string; button: string; onTap?: () => void }) {
  return (
    <div class="keeping-line" role="status">
      <span>{words}</span>
      <button class="second" onClick={onTap}>
        {button}
      </button>
    </div>
  );
}
