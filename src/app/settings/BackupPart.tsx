import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { canChooseFolder, chooseFolder, chosenFolder, copyToFolder, leaveFolder } from './folderCopy';
import { canShare, giveBackup, saveBackup, share } from '../keeping/giveBackup';
import { PassphraseBox } from './PassphraseBox';

/** One file with everything: shared, saved, or copied by itself into a chosen folder. */
export function BackupPart({ onDone }: { onDone: () => void }) {
  const passphrase = useSignal('');
  const state = useSignal('');
  const give = (hand: (file: Blob) => Promise<boolean>) => async () => {
    state.value = 'One moment…';
    state.value = await giveBackup(hand, passphrase.value);
    onDone();
  };
  return (
    <>
      <PassphraseBox
        title="Passphrase, if it is to be locked"
        help="Write it down: without it no one can open the file, and no one can help."
        onText={(text) => (passphrase.value = text)}
      />
      {canShare() && (
        <button class="main" onClick={give(share)}>
          Share a backup
        </button>
      )}
      <button class={canShare() ? 'second' : 'main'} onClick={give(saveBackup)}>
        Save a backup as a file
      </button>
      <p role="status">{state.value}</p>
      {canChooseFolder() && <FolderPart onDone={onDone} />}
    </>
  );
}

function FolderPart({ onDone }: { onDone: () => void }) {
  const folder = useSignal<{ name: string; allowed: boolean } | null>(null);
  const look = async () => void (folder.value = await chosenFolder());
  useEffect(() => void look(), []);
  const choose = async () => {
    if (await chooseFolder()) await copyToFolder();
    await look();
    onDone();
  };
  if (!folder.value)
    return (
      <button class="second" onClick={() => void choose()}>
        Choose a folder for copies
      </button>
    );
  const again = () => copyToFolder().then(look).then(onDone);
  return (
    <>
      <p>
        {folder.value.allowed
          ? `At each start a new copy goes into the folder “${folder.value.name}”, not locked.`
          : `The folder “${folder.value.name}” must be allowed again.`}
      </p>
      <button class="second" onClick={() => void again()}>
        {folder.value.allowed ? 'Copy there now' : 'Allow it and copy there'}
      </button>
      <button class="second" onClick={() => void leaveFolder().then(look)}>
        No more copies there
      </button>
    </>
  );
}
