import { useSignal } from '@preact/signals';
import { changeSettings, shelf } from '../../records/shelf';
import type { Settings } from '../../records/kind/settings';
import { say } from '../../ui/device/voice';

const switches = [
  ['speech', 'Count aloud', 'Steps and drops are spoken by this phone'],
  ['tick', 'Tick at each drop', 'Another sound for the last drop, and for one too many'],
  ['remote', 'Foot switch or remote', 'Forward counts a drop, back takes one back'],
  ['mediaKeys', 'Buttons of headphones', 'Play counts, back takes a drop back'],
] as const satisfies readonly (readonly [keyof Settings, string, string])[];

/** Whether any of them is on. */
export function handsAreHelped(settings: Settings): boolean {
  return switches.some(([name]) => settings[name]);
}

/** What helps while the hands are wet or busy, each on or off by one touch; it holds at once. */
export function HandsSwitches() {
  const mute = useSignal(false);
  const settings = shelf.settings.value;
  const turn = (name: (typeof switches)[number][0]) => {
    const on = !settings[name];
    if (name === 'speech') mute.value = on && !say('Counting aloud.');
    void changeSettings({ [name]: on });
  };
  return (
    <div class="sheet-rows" role="group" aria-label="Hands busy">
      {switches.map(([name, words, hint]) => (
        <button
          key={name}
          type="button"
          class="sheet-row switch"
          role="switch"
          aria-checked={settings[name] === true}
          onClick={() => turn(name)}
        >
          <span>
            <b>{words}</b>
            <small>{hint}</small>
          </span>
          <i aria-hidden="true">{settings[name] ? 'On' : 'Off'}</i>
        </button>
      ))}
      {mute.value && (
        <p class="note" role="status">
          This browser has no English voice that works without a network, so nothing would be spoken.
        </p>
      )}
    </div>
  );
}
