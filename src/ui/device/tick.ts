import { onFirstTouch } from './firstTouch';

export type Sound = 'drop' | 'undo' | 'reached' | 'over';

/** Pitch in Hz, beginning and length in seconds of each tone: our choice, to be told apart over a running tap. */
const tones: Record<Sound, readonly (readonly [hz: number, from: number, lasts: number])[]> = {
  drop: [[1600, 0, 0.04]],
  undo: [[600, 0, 0.08]],
  reached: [
    [880, 0, 0.16],
    [1320, 0.16, 0.4],
  ],
  over: [
    [330, 0, 0.16],
    [330, 0.22, 0.3],
  ],
};

let context: AudioContext | undefined;
onFirstTouch(() => void (window.AudioContext && awake()));

/** Plays a sound that is made here; where the phone cannot, nothing happens. */
export function play(sound: Sound): void {
  try {
    const out = awake();
    for (const tone of tones[sound]) ring(out, tone);
  } catch {
    // what is heard is seen too
  }
}

function ring(out: AudioContext, [hz, from, lasts]: (typeof tones)[Sound][number]): void {
  const begin = out.currentTime + from;
  const tone = new OscillatorNode(out, { frequency: hz, type: 'triangle' });
  const loudness = new GainNode(out, { gain: 0 });
  loudness.gain.setValueAtTime(0.5, begin);
  loudness.gain.exponentialRampToValueAtTime(0.001, begin + lasts);
  tone.connect(loudness).connect(out.destination);
  tone.start(begin);
  tone.stop(begin + lasts);
}

/** The way out to the loudspeaker; phones put it to sleep when the page was away. */
function awake(): AudioContext {
  context ??= new AudioContext();
  if (context.state !== 'running') context.resume().catch(() => {});
  return context;
}
