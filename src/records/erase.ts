import { eraseDatabase } from './store/database';
import { closeJournal, eraseJournal } from './journal/journal';
import { forgetDevice } from './store/device';
import { forgetKept } from './store/marker';
import { tellOthers } from './store/otherWindows';

/** Erases everything that was kept on this device, both copies and the mark; other windows close theirs. No way back but a backup, or another device that has it: that one keeps it. */
export async function eraseEverything(): Promise<void> {
  tellOthers({ erased: true });
  await eraseJournal();
  closeJournal();
  await eraseDatabase();
  forgetKept();
  forgetDevice();
}
