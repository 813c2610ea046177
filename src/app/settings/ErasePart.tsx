import { useSignal } from '@preact/signals';
import { eraseEverything } from '../../records/erase';
import { go } from '../nav/route';

/** Erases both copies, after one question. */
export function ErasePart() {
  const state = useSignal<'' | 'asked' | 'busy'>('');
  const trouble = useSignal('');
  const erase = async () => {
    state.value = 'busy';
    try {
      await eraseEverything();
      go([], 'replace');
      location.reload();
    } catch (error) {
      trouble.value = `Not everything could be erased: ${error instanceof Error ? error.message : String(error)}`;
      state.value = '';
    }
  };
  if (state.value === '')
    return (
      <>
        {trouble.value && (
          <p class="trouble" role="alert">
            {trouble.value}
          </p>
        )}
        <button class="second" onClick={() => (state.value = 'asked')}>
          Erase everything on this device
        </button>
      </>
    );
  return <Asked busy={state.value === 'busy'} onErase={() => void erase()} onKeep={() => (state.value = '')} />;
}

function Asked({ busy, onErase, onKeep }: { busy: boolean; onErase: () => void; onKeep: () => void }) {
  return (
    <>
      <p class="trouble" role="alert">
        All records, runs and settings go from this device, from both copies. Only a backup or another device that has
        them brings them back; what is on another device stays there.
      </p>
      <div class="row">
        <button class="second" disabled={busy} onClick={onErase}>
          {busy ? 'Erasing…' : 'Erase it all'}
        </button>
        <button class="main" disabled={busy} onClick={onKeep}>
          Keep it
        </button>
      </div>
    </>
  );
}
