import { effect } from '@preact/signals';
import { play } from '../../ui/device/tick';
import { countingOf, type Walk } from '../engine/task';

/** Sounds each drop that is one too many, where nothing else is to be heard, until the returned function is called. */
export function soundOver(walk: Walk): () => void {
  let before = { key: '', drops: 0 };
  return effect(() => {
    const { key } = walk.step.value;
    const { target, counter } = countingOf(walk.step.value) ?? { target: null, counter: '' };
    const drops = walk.state.value.drops[counter] ?? 0;
    if (key === before.key && drops > before.drops && target !== null && drops > target) play('over');
    before = { key, drops };
  });
}
