import { useEffect } from 'preact/hooks';
import type { LineShape } from '../../core/text/scaleLine';
import { changeSettings, shelf } from '../../records/shelf';
import { shortIdInCode } from '../../records/kind/shortId';
import { keyName } from '../../ui/device/keyNames';
import { countedPresses, lineKeys, ownOf } from '../../ui/device/lineKeys';
import { fieldForWeight, isScaleHeard, lineNotice, NOT_WANTED, scaleShapes } from '../../ui/device/typingScale';
import { countingOf, type Walk } from '../engine/task';
import { actionOf } from './keyActions';
import { scanned } from './LabelCheck';

let underWay: readonly LineShape[] = []; // on their way to the disk: the next line may come before they are there

scaleShapes.known = () => [...(shelf.settings.value.lineShapes ?? []), ...underWay];
scaleShapes.keep = async (shape) => {
  underWay = [...underWay, shape];
  try {
    await changeSettings({ lineShapes: [...(shelf.settings.peek().lineShapes ?? []), shape] });
  } finally {
    underWay = underWay.filter((one) => one !== shape);
  }
};

const EDITABLE = 'input:not([type=radio], [type=checkbox]), textarea, select';
const CONTROL = 'button, a, summary, input';

/**
 * Where the lines of a scale or of a reader of codes go while a run is on the screen: into the field that wants a weight; else nowhere. A line
 * presses nothing and counts nothing, with all its keys up to the Enter or Tab that ends it.
 */
export function useTypedLines(walk: Walk): void {
  useEffect(() => {
    const keys = lineKeys<Event>();
    const held = new Set<string>(); // keys that are down and belong to a line
    const onDown = (event: KeyboardEvent) => {
      if (event.isComposing || isCommand(event) || isIn(event.target, EDITABLE)) return;
      const name = event.key;
      if (event.repeat ? held.has(event.code) : isOfLine(name, event)) swallow(event, held);
    };
    const isOfLine = (name: string, event: KeyboardEvent): boolean => {
      const field = countingOf(walk.step.peek()) || isTaught(event) ? null : fieldForWeight();
      if (field && [...name].length === 1 && !(name === ' ' && isIn(event.target, CONTROL))) {
        field.focus({ preventScroll: true }); // the key goes on into it
        field.select();
        return false;
      }
      const counts = wouldCount(event, walk);
      const meaning = keys.key(name, counts ? { press: event } : undefined);
      if (meaning.is === 'end') lineEnded(walk, meaning);
      else if (meaning.is === 'free' && !counts) tellPress(event, walk);
      return meaning.is !== 'free';
    };
    const onUp = (event: KeyboardEvent) => void (held.delete(event.code) && stop(event));
    const onClick = (event: MouseEvent) => void (event.detail > 0 && setTimeout(letGo, 0, event.target));
    const listens = [
      ['keydown', onDown],
      ['keyup', onUp],
      ['pointerdown', keys.touched],
      ['click', onClick],
    ] as const;
    for (const [type, heard] of listens) addEventListener(type, heard as EventListener, true);
    return () => {
      for (const [type, heard] of listens) removeEventListener(type, heard as EventListener, true);
      lineNotice.value = null;
    };
  }, [walk]);
}

/** A shortcut; what AltGr types is none. */
function isCommand(event: KeyboardEvent): boolean {
  return event.metaKey || ((event.ctrlKey || event.altKey) && !event.getModifierState('AltGraph'));
}

function isIn(target: EventTarget | null, what: string): boolean {
  return target instanceof Element && target.closest(what) !== null;
}

function swallow(event: KeyboardEvent, held: Set<string>): void {
  held.add(event.code);
  stop(event);
}

function stop(event: Event): void {
  event.preventDefault();
  event.stopImmediatePropagation();
}

/** A button that was touched does not keep the focus: the blanks of a line would press it. Where a scale types, the field has it again. */
function letGo(touched: EventTarget | null): void {
  const now = document.activeElement;
  if (!(now instanceof HTMLElement) || now.matches(EDITABLE) || document.querySelector('dialog[open]')) return;
  const field = isScaleHeard() ? fieldForWeight() : null;
  if (field) field.focus({ preventScroll: true });
  else if (now.matches(CONTROL) && now.contains(touched as Node)) now.blur();
}

/** Whether a key counts a drop, takes one back or goes on where no line is open: the pad's own, or one that was taught. */
function wouldCount(event: KeyboardEvent, walk: Walk): boolean {
  if (!countingOf(walk.step.peek()) || document.querySelector('dialog[open]')) return false;
  const presses = event.key === 'Enter' || event.key === ' ';
  if (presses && isIn(event.target, '[data-counts]')) return true;
  if (presses && isIn(event.target, CONTROL)) return false;
  return isTaught(event);
}

function isTaught(event: KeyboardEvent): boolean {
  const { remote, keys } = shelf.settings.peek();
  return Boolean(remote) && actionOf(keyName(event), keys) !== undefined;
}

/** What a line came to that no field takes: a code that is to be checked; else it is said, and presses that were its blanks are taken back. */
function lineEnded(walk: Walk, { text, before }: { text: string; before: readonly Event[] }): void {
  const step = walk.step.peek();
  const own = before.slice(before.length - ownOf(before.length, text, scaleShapes.known()));
  const drops = own.filter((press) => countedPresses.has(press)).length;
  const counter = countingOf(step)?.counter;
  if (step.pad?.expects && shortIdInCode(text.trim()) !== null)
    return void (lineNotice.value = scanned(walk, text.trim()));
  if (!counter || drops === 0) return void (lineNotice.value = { words: NOT_WANTED });
  const each = (type: 'drop' | 'undo') =>
    walk.happen(...Array.from({ length: drops }, () => ({ type, key: counter }) as const));
  void each('undo');
  lineNotice.value = {
    words: `A scale is typing. What counted as ${drops === 1 ? '1 drop' : `${drops} drops`} were blanks that it typed, and is taken back.`,
    button: { words: 'They were drops', does: () => each('drop') },
  };
}

/** Says what a press of Space or Enter beside the pad is: a scale may have typed it, so it counts once it was taught. */
function tellPress({ key, target }: KeyboardEvent, walk: Walk): void {
  if ((key !== ' ' && key !== 'Enter') || !countingOf(walk.step.peek()) || isIn(target, CONTROL)) return;
  const words = key === ' ' ? 'Space' : 'Enter';
  lineNotice.value = {
    words: `${words} was not counted: a scale may have typed it.`,
    button: { words: `Let ${words} count`, does: () => teach(key) },
  };
}

function teach(key: string): Promise<void> {
  return changeSettings({ remote: true, keys: { ...shelf.settings.peek().keys, [key]: 'drop' } });
}
