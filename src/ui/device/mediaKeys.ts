import { onFirstTouch } from './firstTouch';

/** Media buttons by the names that a keyboard gives them. */
const names: Partial<Record<MediaSessionAction, string>> = {
  play: 'MediaPlayPause',
  pause: 'MediaPlayPause',
  nexttrack: 'MediaTrackNext',
  previoustrack: 'MediaTrackPrevious',
};

/** Hears the buttons of headphones until the returned function is called. A phone passes them on only to a page that plays: so silence is played. */
export function hearMediaKeys(heard: (name: string) => void): () => void {
  const session = navigator.mediaSession;
  if (!session) return () => {};
  const address = URL.createObjectURL(silence());
  const player = new Audio(address);
  player.loop = true;
  const begin = () => void (player.src && player.play().catch(() => {}));
  const playing = () => (session.playbackState = 'playing');
  player.addEventListener('playing', playing);
  onFirstTouch(begin);
  begin();
  handle((action) => () => {
    begin(); // some phones stop what plays before they tell
    heard(names[action]!);
  });
  return () => {
    handle(() => null);
    player.removeEventListener('playing', playing);
    player.pause();
    player.removeAttribute('src');
    URL.revokeObjectURL(address);
    session.playbackState = 'none';
  };
}

function handle(handler: (action: MediaSessionAction) => MediaSessionActionHandler | null): void {
  for (const action of Object.keys(names) as MediaSessionAction[])
    try {
      navigator.mediaSession.setActionHandler(action, handler(action));
    } catch {
      // this browser does not know the button
    }
}

/** A sound file without a sound (RIFF WAVE, PCM, one channel, 8 bit). Of 10 s, since what lasts 5 s or less gets no media buttons in Chromium. */
function silence(): Blob {
  const rate = 8000; // samples, and here bytes, per second
  const length = 10 * rate;
  const head = new DataView(new ArrayBuffer(44));
  const word = (at: number, letters: string) =>
    [...letters].forEach((one, i) => head.setUint8(at + i, one.charCodeAt(0)));
  word(0, 'RIFF');
  head.setUint32(4, 36 + length, true);
  word(8, 'WAVE');
  word(12, 'fmt');
  head.setUint8(15, 0x20); // its name has four letters, the last one a space
  head.setUint32(16, 16, true);
  head.setUint16(20, 1, true); // PCM
  head.setUint16(22, 1, true); // channels
  head.setUint32(24, rate, true);
  head.setUint32(28, rate, true);
  head.setUint16(32, 1, true); // bytes per sample
  head.setUint16(34, 8, true); // bits
  word(36, 'data');
  head.setUint32(40, length, true);
  return new Blob([head.buffer, new Uint8Array(length).fill(128)], { type: 'audio/wav' });
}
