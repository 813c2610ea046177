import { render } from 'preact';
import { App } from './app/App';
import { listenForMishaps } from './app/fault/mishap';
import { keepInstallOffer } from './app/nav/installOffer';
import { loadAllTasks } from './app/nav/loaded';
import { FOLDER } from './app/pairing/folderAsks';
import { takeOpenedFiles } from './app/settings/openedFile';
import { scriptUrl } from './app/nav/scriptUrl';
import { registerWorker } from './app/nav/update';
import journalScript from './records/journal/journalWorker?worker&url';
import { load, whenFirstRead } from './records/shelf';
import { remembered } from './records/store/database';
import './ui/base.css';

listenForMishaps();
const root = document.getElementById('app')!;
const loading = load(() => new Worker(scriptUrl(journalScript), { type: 'module', name: 'journal' }));
const LONGEST = 1000; // ms; our choice: a store that does not answer by then is not waited for

/** The Bench stands in the page; it is drawn when what is paused is known, so that a slow phone lays it out once. */
const drawn = Promise.race([whenFirstRead, new Promise((resolve) => setTimeout(resolve, LONGEST))]).then(() => {
  // Preact would leave the Bench of the page beside what it draws; a link on it may have been tapped meanwhile.
  if (location.hash.length > 2) root.replaceChildren();
  delete document.documentElement.dataset['elsewhere'];
  render(<App />, root);
});
loading
  .finally(() => {
    // No one waits for these, and they cost a slow phone 90 ms.
    void registerWorker();
    void navigator.storage?.persist?.();
  })
  .then(async () => (await import('./app/shelf/warm')).keepWarm())
  .then(loadAllTasks)
  .then(() => void copyOut())
  .catch(async (error: unknown) => {
    await drawn;
    root.prepend(
      `Minim cannot read its database on this phone: ${error instanceof Error ? error.message : String(error)}`,
    );
  });
/** The copy in the chosen folder, and the folder that several devices share. When it cannot be written, the reminder of the backup comes by itself. */
async function copyOut(): Promise<void> {
  if (!('showDirectoryPicker' in window)) return;
  if (await remembered('folder')) await (await import('./app/settings/folderCopy')).copyWhenNew().catch(() => {});
  if (await remembered(FOLDER)) (await import('./app/pairing/sharedFolder')).watchFolder();
}

keepInstallOffer();
takeOpenedFiles();
