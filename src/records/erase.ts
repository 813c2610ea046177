import { eraseDatabase } from './store/database';
import { closeJournal, eraseJournal } from './journal/journal';
import { forgetKept } from './store/marker';
import { tellOthers } from './store/otherWindows';

/** Erases everything that was kept on this device, both copies and the mark; other windows close theirs. No way back but a backup. */
export async function eraseEverything(): Promise<void> {
  tellOthers({ erased: true });
  await eraseJournal();
  closeJournal();
  await eraseDatabase();
  forgetKept();
}
