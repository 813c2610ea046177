import { useSignal } from '@preact/signals';
import { canShare, giveBackup, share } from '../keeping/giveBackup';
import { backupName } from '../nav/keepingWords';
import { saveBlob } from '../nav/saveFile';
import { RestorePart } from '../settings/RestorePart';

/** A file with everything, given to the other device by whatever both have, and opened there. */
export function FilePart() {
  const went = useSignal('');
  const give = (hand: (file: Blob) => Promise<boolean>) => async () => {
    went.value = 'One moment…';
    went.value = await giveBackup(hand);
  };
  return (
    <section>
      <h2>By a file</h2>
      <p>Works everywhere: share or save the file here, and open it on the other device. Then the other way round.</p>
      {canShare() && (
        <button class="second" onClick={() => void give(share)()}>
          Share a file for the other device
        </button>
      )}
      <button class="second" onClick={() => void give(save)()}>
        Save a file for the other device
      </button>
      <p role="status">{went.value}</p>
      <RestorePart words="Open a file from the other device" />
    </section>
  );
}

/** A name by which the installed app opens it from the file list. */
async function save(file: Blob): Promise<boolean> {
  saveBlob(`${backupName()}.minim`, file);
  return true;
}
