import { useSignal } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import { changeSettings, shelf } from '../../records/shelf';
import { countWords } from '../../tasks/screen/spoken';
import { keyWords } from '../../ui/device/keyNames';
import { hearMediaKeys } from '../../ui/device/mediaKeys';
import { play } from '../../ui/device/tick';
import { say } from '../../ui/device/voice';
import { Choice } from '../nav/Choice';
import './handsBusy.css';
import { TeachKeys } from './TeachKeys';

type Switch = 'speech' | 'tick' | 'remote' | 'mediaKeys';

/** Voice, ticks, foot switch and headphones: for a count without looking. Each can be tried before it is switched on. */
export function HandsBusy() {
  return (
    <section class="hands-busy" aria-label="Hands busy">
      <h2>Hands busy</h2>
      <p class="quiet">A count can be done without looking at the phone. The screen stays on in a run.</p>
      <OnOff name="speech" title="Say steps and drops aloud">
        English, with a voice of this phone that needs no network. Leave it off where a screen reader tells the count.
      </OnOff>
      <TryVoice />
      <OnOff name="tick" title="A tick for each drop">
        And another sound when all are counted, and when one was too many.
      </OnOff>
      <button class="second" onClick={trySounds}>
        Try it: two drops, all counted, too many
      </button>
      <OnOff name="remote" title="Foot switch, remote, presenter">
        Enter and Space count a drop while the pad has the focus; teach them here and they count wherever it is. With
        this on, forward counts too (Page Down, arrow right or down, volume up) and back takes the last drop back (Page
        Up, arrow left or up, volume down). Letters and signs count once they are taught: a scale types them too. Some
        phones keep the volume buttons to themselves.
      </OnOff>
      {shelf.settings.value.remote && <TeachKeys />}
      <OnOff name="mediaKeys" title="Buttons of headphones">
        Play counts, next moves on, back takes a drop back. Not every phone does this: it passes the buttons on only
        while something plays, so Minim plays silence in a run, and your music may stop. Try it before you trust it.
      </OnOff>
      <TryHeadphones />
    </section>
  );
}

function OnOff({ name, title, children }: { name: Switch; title: string; children: string }) {
  return (
    <Choice
      title={title}
      help={children}
      value={shelf.settings.value[name] ? 'on' : 'off'}
      options={{ off: 'Off', on: 'On' }}
      onChoose={(value) => void changeSettings({ [name]: value === 'on' })}
    />
  );
}

function TryVoice() {
  const mute = useSignal(false);
  const tryIt = () => {
    const [before, now, target] = [11, 12, 12];
    mute.value = !say(`Take L I M 10. Count ${target} drops. ${countWords({ before, now, target })}`);
  };
  return (
    <>
      <button class="second" onClick={tryIt}>
        Try it: a step and its last drop
      </button>
      <p class="note" role="status">
        {mute.value &&
          'This browser has no English voice that works without a network, so nothing would be said. The phone’s own settings, under text to speech, may offer one.'}
      </p>
    </>
  );
}

const BETWEEN_MS = 600;

function trySounds() {
  (['drop', 'drop', 'reached', 'over'] as const).forEach((sound, i) => setTimeout(() => play(sound), i * BETWEEN_MS));
}

function TryHeadphones() {
  const told = useSignal('');
  const stop = useRef<(() => void) | null>(null);
  useEffect(() => () => stop.current?.(), []);
  const tryIt = () => {
    stop.current ??= hearMediaKeys((name) => (told.value = `Heard ${keyWords(name)}.`));
    told.value = 'Silence plays. Press a button of your headphones; what is heard is shown here.';
  };
  return (
    <>
      <button class="second" onClick={tryIt}>
        Try it: play silence and listen
      </button>
      <p class="note" role="status">
        {told.value}
      </p>
    </>
  );
}
