import { effect } from '@preact/signals';
import type { Settings } from '../../records/kind/settings';
import { play, type Sound } from '../../ui/device/tick';
import { hush, say } from '../../ui/device/voice';
import { labelVerdict } from './LabelCheck';
import { countWords, soundOf, stepWords } from './spoken';
import { sentenceText } from '../engine/card';
import { countingOf, type Step, type Walk } from '../engine/task';

/** Tells steps and counts of a walk by voice and sound until the returned function is called. */
export function tellAloud(walk: Walk, { speech, tick }: Settings): () => void {
  const sayIf = (words: string) => void (speech && say(words));
  const playIf = (sound: Sound) => {
    if (tick || (speech && (sound === 'reached' || sound === 'over'))) play(sound);
  };
  const stops = [tellSteps(walk, sayIf, playIf), effect(() => void (walk.trouble.value && sayIf(walk.trouble.value)))];
  return () => {
    for (const stop of stops) stop();
    hush();
  };
}

/** Each step as it comes, and each drop when it is stored. */
function tellSteps(walk: Walk, say: (words: string) => void, play: (sound: Sound) => void): () => void {
  let shown = '';
  let before = 0;
  return effect(() => {
    const step = walk.step.value;
    const { target, counter } = countingOf(step) ?? { target: null, counter: '' };
    const now = walk.state.value.drops[counter] ?? 0;
    const counted = { before, now, target };
    before = now;
    if (step.key !== shown) say(wrongLabel(walk, step) ?? stepWords(heard(walk, step), now));
    else if (now !== counted.before) {
      say(countWords(counted));
      play(soundOf(counted));
    }
    shown = step.key;
  });
}

/** A card is heard as its sentence; what else its slots could hold is not read out. */
function heard(walk: Walk, step: Step): Step {
  return step.card ? { ...step, say: `${sentenceText(walk.state.peek(), step)}.`, ask: [] } : step;
}

function wrongLabel(walk: Walk, step: Step): string | null {
  if (labelVerdict(walk.state.peek(), step) !== 'wrong') return null;
  return `Stop: this is not ${step.pad!.expects!.tag}. Put it back.`;
}
