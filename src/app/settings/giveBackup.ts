import { makeBackup } from '../../records/backup/backup';
import { lockBackup } from '../../records/backup/backupLock';
import { noteBackup } from '../../records/backup/lastBackup';
import { backupName, recordsText } from '../bench/keepingWords';
import { saveBlob } from '../nav/saveFile';

/** Makes a backup and hands it over, locked if there is a passphrase; tells how it went in one sentence, '' when the person turned back. */
export async function giveBackup(hand: (file: Blob) => Promise<boolean>, passphrase = ''): Promise<string> {
  try {
    const { text, records } = await makeBackup();
    const given = await hand(passphrase === '' ? text : await lockBackup(text, passphrase));
    if (given) await noteBackup();
    return given ? `Done: ${recordsText(records)}${passphrase && ', locked'}.` : '';
  } catch (error) {
    return `No backup was made: ${error instanceof Error ? error.message : String(error)}`;
  }
}

/** Hands a backup over as a file. */
export async function saveBackup(file: Blob): Promise<boolean> {
  saveBlob(`${backupName()}.json`, file);
  return true;
}
