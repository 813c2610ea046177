import { WEIGHED } from '../../ui/controls/useScaleLine';
import { countingOf, type Walk } from '../engine/task';

/**
 * Lets Enter go on until the returned function is called: in a field to the next one, in the last field and beside all controls as the main
 * button does, or the first of what a step draws in its place; so does a weight that came from a scale. A button keeps Enter to itself; where
 * drops are counted it is a drop.
 */
export function enterGoesOn(walk: Walk): () => void {
  const onKey = (event: KeyboardEvent) => {
    if (event.key !== 'Enter' || event.repeat || event.isComposing || event.defaultPrevented || isTaken(walk)) return;
    if (placeOf(event.target).at < 0 && isControl(event.target)) return;
    event.preventDefault();
    void goOnFrom(event.target, walk);
  };
  const onWeighed = () => walk.step.peek().rows || mainButton()?.click(); // a list that grows waits for its next row
  addEventListener('keydown', onKey);
  addEventListener(WEIGHED, onWeighed);
  return () => {
    removeEventListener('keydown', onKey);
    removeEventListener(WEIGHED, onWeighed);
  };
}

/** To the next field, else as the main button does. A list that grows draws its next row when what was typed is stored. */
async function goOnFrom(target: EventTarget | null, walk: Walk): Promise<void> {
  if (walk.step.peek().rows) {
    await walk.settled();
    await new Promise((drawn) => setTimeout(drawn));
  }
  const { fields, at } = placeOf(target);
  if (at >= 0 && at < fields.length - 1) fields[at + 1]!.focus();
  else mainButton()?.click();
}

/** The fields to type in, and which of them it is; -1 for none. */
function placeOf(target: EventTarget | null): { fields: readonly HTMLInputElement[]; at: number } {
  const fields = [...document.querySelectorAll<HTMLInputElement>('.run input:not([type=search], [type=radio])')];
  return { fields, at: fields.indexOf(target as HTMLInputElement) };
}

function mainButton(): HTMLElement | null {
  return document.querySelector('.run > .actions .main, .run .first-match');
}

/** Whether Enter is something else now: a drop, or that of an open sheet. */
function isTaken(walk: Walk): boolean {
  return countingOf(walk.step.peek()) !== undefined || document.querySelector('dialog[open]') !== null;
}

function isControl(target: EventTarget | null): boolean {
  return (
    target instanceof Element &&
    target.closest('button, a, summary, textarea, select, input:not([type=radio])') !== null
  );
}
