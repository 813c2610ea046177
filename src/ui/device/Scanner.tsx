import { useSignal } from '@preact/signals';
import type { RefObject } from 'preact';
import { useEffect, useLayoutEffect, useRef } from 'preact/hooks';
import { useCamera, type Camera, type CameraTrouble } from './camera';
import { BackButton } from '../BackButton';
import { codeReader } from './codeReader';
import { LINE_ENDS } from './lineKeys';
import './scanner.css';

interface Found {
  readonly id: string;
  readonly words: string;
}

interface Props {
  title: string;
  /** A code was read. Answers with one sentence when it is not what is looked for, '' when it is. */
  onCode: (text: string) => string;
  /** What a typed text may mean. */
  find: (typed: string) => readonly Found[];
  /** One of those was chosen; answers as onCode does. */
  onPick: (id: string) => string;
  onClose: () => void;
}

const troubles: Readonly<Record<CameraTrouble, string>> = {
  refused: 'Minim may not use the camera. Allow it in the settings of the browser, or type the code from the label.',
  busy: 'Another app is using the camera. Close it, or type the code from the label.',
  none: 'There is no camera here. Type the code from the label.',
};

/** The camera looks for a label's code; a hand-held reader types it; who has neither types what stands on the label. Fills the screen. */
export function Scanner({ title, onCode, find, onPick, onClose }: Props) {
  const video = useRef<HTMLVideoElement>(null);
  const camera = useCamera(video);
  const answer = useSignal('');
  const reading = useReading(video, (text) => (answer.value = onCode(text)));
  const trouble = camera.trouble.value;
  return (
    <section class="run scanner" aria-label={title}>
      <header class="top">
        <BackButton onBack={onClose} />
        <h1>{title}</h1>
      </header>
      <View video={video} camera={camera} problem={trouble ? troubles[trouble] : ''} />
      <p class={answer.value ? 'heard trouble' : 'heard quiet'} role="status" aria-live="assertive">
        {answer.value || reading.value || (trouble ? '' : 'Hold the square code of the label into the frame.')}
      </p>
      <Typing
        find={find}
        onPick={(id) => (answer.value = onPick(id))}
        onCode={(text) => (answer.value = onCode(text))}
      />
    </section>
  );
}

interface Seen {
  video: RefObject<HTMLVideoElement | null>;
  camera: Camera;
  /** Said in place of the picture; '' where there is one. */
  problem: string;
}

/** What the camera sees, with a frame to hold a code into. */
export function View({ video, camera: { torch }, problem }: Seen) {
  return (
    <div class={problem ? 'view none' : 'view'}>
      <video ref={video} playsInline muted autoplay aria-label="What the camera sees" />
      {problem && <p>{problem}</p>}
      {!problem && <i class="aim" />}
      {torch.value && (
        <button class="torch" onClick={torch.value.flip} aria-pressed={torch.value.on}>
          {torch.value.on ? 'Light off' : 'Light on'}
        </button>
      )}
    </div>
  );
}

interface TypingProps {
  find: Props['find'];
  onPick: (id: string) => void;
  onCode: (text: string) => void;
}

function Typing({ find, onPick, onCode }: TypingProps) {
  const typed = useSignal('');
  const box = useRef<HTMLInputElement>(null);
  useKeysInto(box);
  const found = find(typed.value);
  const enter = ({ key }: KeyboardEvent) => {
    if (!LINE_ENDS.includes(key) || typed.value.trim() === '') return;
    const now = find(typed.value); // keys may be faster than what is drawn
    if (now.length === 1 && key === 'Enter') return onPick(now[0]!.id);
    if (now.length > 0) return;
    onCode(typed.value.trim()); // a whole code, as a reader types it
    box.current!.select();
  };
  const nothing = found.length === 0 && typed.value.replace(/[\s-]/g, '').length >= 4;
  return (
    <div class="typing">
      <label class="field">
        <span class="title">Or type the code or short id</span>
        <span class="box">
          <input
            ref={box}
            name="shortId"
            autoComplete="off"
            autoCapitalize="characters"
            spellcheck={false}
            enterKeyHint="go"
            onInput={(event) => (typed.value = event.currentTarget.value)}
            onKeyDown={enter}
          />
        </span>
        <span class={nothing ? 'note wrong' : 'note'}>{nothing && 'Nothing on the Shelf has that on its label.'}</span>
      </label>
      <FoundRows found={found} onPick={onPick} />
    </div>
  );
}

function FoundRows({ found, onPick }: { found: readonly Found[]; onPick: (id: string) => void }) {
  return (
    <ul class="list">
      {found.slice(0, 4).map(({ id, words }) => (
        <li>
          <button class="second" onClick={() => onPick(id)}>
            {words}
          </button>
        </li>
      ))}
    </ul>
  );
}

/** What is typed beside all fields goes into this one: a hand-held reader looks for none. */
function useKeysInto(box: RefObject<HTMLInputElement | null>): void {
  useEffect(() => {
    const onKey = ({ key, target, ctrlKey, altKey, metaKey }: KeyboardEvent) => {
      const isText = [...key].length === 1 && key !== ' ' && !ctrlKey && !altKey && !metaKey;
      if (isText && target !== box.current) box.current?.focus({ preventScroll: true });
    };
    addEventListener('keydown', onKey, true);
    return () => removeEventListener('keydown', onKey, true);
  }, []);
}

const EVERY_MS = 100; // our choice: a picture about ten times a second leaves the phone cool
const AGAIN_MS = 1500; // the same code is said again only after this long

/** Looks at the video for as long as it is on the screen; a sentence when it cannot. */
export function useReading(video: RefObject<HTMLVideoElement | null>, onText: (text: string) => void) {
  const problem = useSignal('');
  useLayoutEffect(() => {
    let gone = false;
    const told = new Map<string, number>();
    const look = async () => {
      const read = await codeReader();
      for (; !gone; await new Promise((wait) => setTimeout(wait, EVERY_MS))) {
        const now = video.current;
        if (!now || now.readyState < 2 || document.hidden) continue;
        for (const text of await read(now)) {
          if (gone || performance.now() - (told.get(text) ?? -Infinity) < AGAIN_MS) continue;
          told.set(text, performance.now());
          onText(text);
        }
      }
    };
    look().catch(() => {
      problem.value = 'The codes cannot be read on this phone. Type the code from the label.';
    });
    return () => void (gone = true);
  }, []);
  return problem;
}
