import type { Settings } from '../../records/kind/settings';
import { keyName } from '../../ui/device/keyNames';
import { hearMediaKeys } from '../../ui/device/mediaKeys';
import { SAME_TOUCH_MS } from '../../ui/controls/TapPad';
import { countedPresses } from '../../ui/device/lineKeys';
import { say } from '../../ui/device/voice';
import { actionOf } from './keyActions';
import { labelVerdict } from './LabelCheck';
import { dropped, problemsOf } from '../engine/leaving';
import { leftWords } from './spoken';
import { countingOf, type Walk } from '../engine/task';

const BOTH_WAYS_MS = 300; // our choice: a media button that comes as a key and from the headphones is one press within this time

/** Lets foot switches, remotes and headphones count, take back and go on until the returned function is called. */
export function hearKeys(walk: Walk, settings: Settings, goOn: () => Promise<void>): () => void {
  const doIt = actions(walk, goOn, (words) => void (settings.speech && say(words)));
  const once = pressedOnce();
  const onKey = (event: KeyboardEvent) => {
    const name = keyName(event);
    const action = actionOf(name, settings.keys);
    if (!action || event.defaultPrevented || isElsewhere(event) || event.ctrlKey || event.altKey || event.metaKey)
      return;
    if (action !== 'next' && !countingOf(walk.step.peek())) return;
    event.preventDefault(); // no scrolling, no louder or softer
    if (event.repeat || !once(name, 'key', event.timeStamp)) return;
    if (action === 'drop') countedPresses.add(event);
    void doIt[action]();
  };
  const onMedia = (name: string) => {
    const action = actionOf(name, settings.keys);
    if (action && once(name, 'media', performance.now())) void doIt[action]();
  };
  if (settings.remote) addEventListener('keydown', onKey);
  const stopMedia = settings.mediaKeys ? hearMediaKeys(onMedia) : () => {};
  return () => {
    removeEventListener('keydown', onKey);
    stopMedia();
  };
}

/** Whether a key is that of a field, or of the control that has the focus. */
export function isElsewhere({ target, key }: KeyboardEvent): boolean {
  const pressesControls = key === 'Enter' || key === ' ';
  const controls = pressesControls ? 'input, textarea, select, button, a, summary' : 'input, textarea, select';
  return target instanceof Element && target.closest(controls) !== null;
}

/** False for the bounce of a switch, and for a press that was heard another way already. */
function pressedOnce() {
  let last = { name: '', way: '', at: -Infinity };
  return (name: string, way: 'key' | 'media', at: number): boolean => {
    const again = name === last.name && at - last.at < (way === last.way ? SAME_TOUCH_MS : BOTH_WAYS_MS);
    if (!again) last = { name, way, at };
    return !again;
  };
}

function actions(walk: Walk, goOn: () => Promise<void>, tell: (words: string) => void) {
  /** Where the count stands when all that was pressed is stored; null where nothing can be counted. */
  const standing = async () => {
    await walk.settled();
    const counting = countingOf(walk.step.peek());
    return counting && { ...counting, count: walk.state.peek().drops[counting.counter] ?? 0 };
  };
  return {
    drop: async () => {
      const step = walk.step.peek();
      const counting = countingOf(step);
      if (counting && labelVerdict(walk.state.peek(), step) !== 'wrong')
        await walk.happen(...dropped(step, walk.state.peek(), counting.counter));
      else tell('Not counted: this is the wrong one.');
    },
    undo: async () => {
      const there = await standing();
      if (there && there.count > 0) await walk.happen({ type: 'undo', key: there.counter });
      else tell('No drop to take back.');
    },
    next: async () => {
      const there = await standing();
      if (there && there.target !== null && there.count < there.target)
        return tell(leftWords(there.count, there.target));
      const { key } = walk.step.peek();
      await goOn();
      const step = walk.step.peek();
      const why = Object.values(problemsOf(step, walk.state.peek()))[0] ?? step.problem;
      if (step.key === key && why) tell(why);
    },
  };
}
