import { makeBackup } from '../../records/backup/backup';
import { largestBackup } from '../../records/backup/backupFile';
import { lockBackup } from '../../records/backup/backupLock';
import { noteBackup } from '../../records/backup/lastBackup';
import { nameThisDevice } from './deviceSort';
import { backupName, recordsText } from '../nav/keepingWords';
import { saveBlob } from '../nav/saveFile';
import { photosAndSize } from '../photo/photoWords';

/** Makes a backup and hands it over, locked if there is a passphrase; tells how it went in one sentence, '' when the person turned back. */
export async function giveBackup(hand: (file: Blob) => Promise<boolean>, passphrase = ''): Promise<string> {
  try {
    await nameThisDevice();
  } catch (error) {
    return notMade(error);
  }
  return giveBackupAsItIs(hand, passphrase);
}

/** The same from a page that broke: nothing is written, so that nothing is drawn again. */
export async function giveBackupAsItIs(hand: (file: Blob) => Promise<boolean>, passphrase = ''): Promise<string> {
  try {
    const { text, records, photos } = await makeBackup();
    const file = passphrase === '' ? text : await lockBackup(text, passphrase);
    if (file.size > largestBackup)
      return `No backup was made: it would have ${Math.ceil(file.size / 1024 ** 2)} MB, and Minim opens at most 128 MB. Remove some photos.`;
    const given = await hand(file);
    if (given) await noteBackup();
    const holds = [recordsText(records), photosAndSize(photos), passphrase && 'locked'].filter(Boolean).join(', ');
    return given ? `Done: ${holds}.` : '';
  } catch (error) {
    return notMade(error);
  }
}

function notMade(error: unknown): string {
  return `No backup was made: ${error instanceof Error ? error.message : String(error)}`;
}

/** Hands a backup over as a file. */
export async function saveBackup(file: Blob): Promise<boolean> {
  saveBlob(`${backupName()}.json`, file);
  return true;
}

/** Text is what phones share; a restore takes it as well as .json. */
function asShared(file: Blob): File {
  return new File([file], `${backupName()}.txt`, { type: 'text/plain' });
}

/** Whether this phone hands files to other apps. */
export function canShare(): boolean {
  return navigator.canShare?.({ files: [asShared(new Blob(['x']))] }) ?? false;
}

/** Hands a backup to another app of the phone; false when the person turned back. */
export async function share(file: Blob): Promise<boolean> {
  try {
    await navigator.share({ files: [asShared(file)], title: backupName() });
    return true;
  } catch (error) {
    if (error instanceof DOMException && error.name === 'AbortError') return false;
    throw error;
  }
}

/** A backup in one tap, not locked: to another app where the phone can, else as a file. Tells how it went, '' when the person turned back. */
export function backUpNow(): Promise<string> {
  return giveBackup(canShare() ? share : saveBackup);
}
