import { signal } from '@preact/signals';
import { openBackup, planRestore, restore, type Restoring, type Way } from '../../records/backup/backup';
import type { BackupContent } from '../../records/backup/backupFile';
import { copies } from '../../records/journal/journal';
import { shelf } from '../../records/shelf';
import { FileButton } from '../../ui/controls/FileButton';
import { PassphraseBox } from './PassphraseBox';
import { RestorePreview } from './RestorePreview';

type State =
  | { at: 'choose'; told?: string; wrong?: string }
  | { at: 'reading' }
  | { at: 'locked'; file: File; wrong?: string }
  | { at: 'preview'; content: BackupContent; plan: Restoring }
  | { at: 'working'; share: number; stop: AbortController };

/** Outlives the page, so that a restore goes on while the person looks elsewhere. */
const state = signal<State>({ at: 'choose' });
let passphrase = '';

/** A file is chosen, looked into, and only then, on a tap, restored. */
export function RestorePart({ words = 'Choose a backup' }: { words?: string }) {
  const now = state.value;
  switch (now.at) {
    case 'choose':
      return <Choose words={words} told={now.told} wrong={now.wrong} />;
    case 'reading':
      return <p role="status">Looking into the file…</p>;
    case 'locked':
      return <Locked file={now.file} wrong={now.wrong} />;
    case 'preview':
      return (
        <RestorePreview
          plan={now.plan}
          onWay={(way) => void preview(now.content, way)}
          onRestore={() => void work(now.plan)}
          onLeave={() => (state.value = { at: 'choose' })}
        />
      );
    case 'working':
      return <Working share={now.share} stop={now.stop} />;
  }
}

function Choose({ words, told, wrong }: { words: string; told: string | undefined; wrong: string | undefined }) {
  return (
    <>
      {told && <p role="status">{told}</p>}
      {wrong && (
        <p class="trouble" role="alert">
          {wrong}
        </p>
      )}
      <FileButton
        words={words}
        name="backup"
        accept=".minim,.json,.txt,application/json,text/plain"
        onFiles={([file]) => void look(file!)}
      />
      <p class="note">You see what would change before anything does.</p>
    </>
  );
}

function Locked({ file, wrong }: { file: File; wrong: string | undefined }) {
  return (
    <>
      <PassphraseBox title="This backup is locked. Its passphrase:" help="" onText={(text) => (passphrase = text)} />
      {wrong && (
        <p class="trouble" role="alert">
          {wrong}
        </p>
      )}
      <div class="row">
        <button class="second" onClick={() => (state.value = { at: 'choose' })}>
          Leave it
        </button>
        <button class="main" onClick={() => void look(file, passphrase)}>
          Open
        </button>
      </div>
    </>
  );
}

function Working({ share, stop }: { share: number; stop: AbortController }) {
  const percent = Math.round(share * 100);
  return (
    <>
      <p role="status">{share < 1 ? `Restoring: ${percent} %` : 'Writing the second copy…'}</p>
      <progress value={share} max={1} aria-label="Restoring" />
      <button class="second" disabled={share >= 1} onClick={() => stop.abort()}>
        Stop, and change nothing
      </button>
    </>
  );
}

/** Looks into a file, and shows what would change. */
export async function look(file: File, typed?: string): Promise<void> {
  if (state.value.at === 'working') return;
  state.value = { at: 'reading' };
  try {
    const opened = await openBackup(file, typed);
    if (opened.state === 'open') return await preview(opened.content, 'merge');
    if (opened.state === 'locked') state.value = { at: 'locked', file };
    else if (typed !== undefined) state.value = { at: 'locked', file, wrong: opened.why };
    else state.value = { at: 'choose', wrong: opened.why };
  } catch (error) {
    state.value = { at: 'choose', wrong: `The file could not be read: ${said(error)}` };
  }
}

async function preview(content: BackupContent, way: Way): Promise<void> {
  state.value = { at: 'preview', content, plan: await planRestore(content, way) };
}

async function work(plan: Restoring): Promise<void> {
  const stop = new AbortController();
  state.value = { at: 'working', share: 0, stop };
  try {
    await restore(plan, { progress: (share) => (state.value = { at: 'working', share, stop }), signal: stop.signal });
    shelf.lost.value = null;
    state.value = { at: 'choose', told: restoredWords() };
  } catch (error) {
    const stopped = stop.signal.aborted;
    state.value = {
      at: 'choose',
      wrong: stopped ? 'Stopped: nothing was changed.' : `Nothing was changed: ${said(error)}`,
    };
  }
}

/** What holds it now; a browser that keeps one copy says so. */
function restoredWords(): string {
  return copies.value.possible
    ? 'Restored. Both copies on this device hold it now.'
    : 'Restored. This browser keeps it once: back it up elsewhere, too.';
}

function said(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}
