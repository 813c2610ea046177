import { useSignal } from '@preact/signals';
import { useLayoutEffect } from 'preact/hooks';
import type { KeyAction } from '../../records/kind/settings';
import { changeSettings, shelf } from '../../records/shelf';
import { catchKey, keyWords } from '../../ui/device/keyNames';

const actions: Record<KeyAction, { does: string; now: string }> = {
  drop: { does: 'Count a drop', now: 'counts a drop' },
  undo: { does: 'Take the last drop back', now: 'takes the last drop back' },
  next: { does: 'Next step', now: 'moves on when all are counted' },
};

/** Any key can be taught: press it once, and it counts. */
export function TeachKeys() {
  const listening = useSignal<KeyAction | null>(null);
  const told = useSignal('');
  const { keys = {} } = shelf.settings.value;
  useLayoutEffect(() => {
    const action = listening.value;
    if (!action) return;
    return catchKey((name) => {
      listening.value = null;
      told.value = name === null ? 'No key was taught.' : learn(name, action);
    });
  }, [listening.value]);
  return (
    <div class="teach" role="group" aria-label="Teach a key">
      <p class="quiet">Does yours send something else? Teach it: tap what it should do, then press it.</p>
      {(Object.keys(actions) as KeyAction[]).map((action) => (
        <button class="entry" onClick={() => (listening.value = action)}>
          <b>{actions[action].does}</b>
          <span>
            {listening.value === action ? 'Press your foot switch or remote now…' : taughtWords(keys, action)}
          </span>
        </button>
      ))}
      <p class="note" role="status">
        {told.value}
      </p>
      {Object.keys(keys).length > 0 && (
        <button class="second" onClick={() => void changeSettings({ keys: {} })}>
          Forget what was taught
        </button>
      )}
    </div>
  );
}

function taughtWords(keys: Readonly<Record<string, KeyAction>>, action: KeyAction): string {
  const taught = Object.keys(keys).filter((name) => keys[name] === action);
  return taught.length > 0 ? `Taught: ${taught.map(keyWords).join(', ')}` : 'Teach a key';
}

/** Stores it, and says what was heard. */
function learn(name: string, action: KeyAction): string {
  if (name === '') return 'A key was pressed, but the phone does not say which. Try another button.';
  if ((name === 'Enter' || name === ' ') && action !== 'drop')
    return `Heard ${keyWords(name)}. It can only count a drop.`;
  void changeSettings({ keys: { ...shelf.settings.peek().keys, [name]: action } });
  return `Heard ${keyWords(name)}: it ${actions[action].now} now.`;
}
