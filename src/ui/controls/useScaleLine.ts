import { useEffect, useLayoutEffect, useRef, useState } from 'preact/hooks';
import { readNumber } from '../../core/number/typed';
import { LINE_ENDS } from '../device/lineKeys';
import { CABLE_LINE, isScaleHeard, lineNotice, scaleShapes, verdictOn, type LineVerdict } from '../device/typingScale';
import { formatTypedText } from '../format';
import type { FieldFacts } from './field';

interface Box {
  readonly field: FieldFacts;
  readonly box: { readonly current: HTMLInputElement | null };
  readonly text: string;
  readonly store: (text: string) => Promise<void>;
}

/** What a field for a weight says of the line that came, and the answers to a question about it. */
export interface LineSaid {
  readonly wrong?: string;
  readonly asks?: { readonly words: string; readonly answers: readonly (readonly [words: string, does: () => void])[] };
}

/** What the step hears once a weight was taken: it goes on. */
export const WEIGHED = 'weighed';

/**
 * A field for a weight takes a whole line of a scale up to Enter or Tab, whatever its shape: it reads it, asks once whether that is what the
 * scale shows, and goes on as its step does. What is refused changes nothing. A number typed by hand is a number, as in any field.
 */
export function useScaleLine({ field, box, text, store }: Box) {
  const before = useRef(text); // what is in the field again when a line is refused
  const asked = useRef<string | null>(null); // what stands there as long as a question is open
  const [said, setSaid] = useState<LineSaid>({});
  const { settle, drop, ask, wait } = lineAnswers({ box, store, before, asked, setSaid });
  const take = async (line: string) => {
    if (asked.current !== null) return wait();
    const verdict = verdictOn(line, (now) => whyNot(field, now));
    if (verdict.is === 'refused') return drop(verdict.words);
    return verdict.is === 'taken' ? settle(verdict.text, verdict.words) : ask(verdict);
  };
  useArrival({ field, box, text }, take);
  return { said, hears: hands({ box, text, before, asked, store, take, quiet: () => setSaid({}) }) };
}

interface Answering extends Pick<Box, 'box' | 'store'> {
  before: { current: string };
  asked: { current: string | null };
  setSaid: (change: LineSaid | ((now: LineSaid) => LineSaid)) => void;
}

/** What becomes of a line: it is taken, dropped or asked about; one that comes while a question is open waits. */
function lineAnswers({ box, store, before, asked, setSaid }: Answering) {
  const put = (now: string) => {
    const input = box.current;
    if (input) input.value = formatTypedText(now);
    if (input && input === document.activeElement) input.select(); // the next line takes its place
    return store(now);
  };
  const say = (now: LineSaid, open: string | null = null) => {
    asked.current = open;
    setSaid(now);
  };
  const settle = async (now: string, words: string) => {
    const old = before.current;
    before.current = now;
    say({});
    await put(now);
    const takeBack = () => ((before.current = old), box.current ? put(old) : store(old));
    lineNotice.value = { words, button: { words: 'Undo', does: takeBack } };
    requestAnimationFrame(() => setTimeout(() => box.current && goOn(box.current))); // when what was stored is drawn
  };
  const drop = (wrong?: string) => (say(wrong ? { wrong } : {}), put(before.current));
  const ask = ({ text: now, words, shape }: Exclude<LineVerdict, { is: 'refused' }>) => {
    const yes = () => (scaleShapes.keep(shape), void settle(now, words));
    const byHand = () => void settle(now, words);
    const answers = [
      ['Yes', yes],
      ['I typed it', byHand],
      ['No', () => void drop()],
    ] as const;
    say({ asks: { words: `${words} Is that what it shows?`, answers } }, now);
    return put(now);
  };
  const wait = () => {
    setSaid((now) => ({ ...now, wrong: `First answer for ${formatTypedText(asked.current!)} g.` }));
    return put(asked.current!);
  };
  return { settle, drop, ask, wait };
}

interface Hands extends Pick<Box, 'box' | 'text' | 'store'> {
  before: { current: string };
  asked: { readonly current: string | null };
  take: (line: string) => Promise<void>;
  quiet: () => void;
}

/** What the box hears. What can be no number is not stored before its line has ended. */
function hands({ box, text, before, asked, store, take, quiet }: Hands) {
  const value = () => box.current?.value ?? ''; // it may be gone when it loses the focus
  return {
    onFocus: () => (before.current = text),
    onInput: () => {
      if (asked.current !== null) return;
      quiet();
      if (readNumber(value()).kind !== 'none') void store(value());
    },
    onBlur: () => {
      const isOther = asked.current !== null && value() !== formatTypedText(asked.current);
      if (isOther || readNumber(value()).kind === 'none') void take(value());
    },
    onPointerDown: () => (box.current!.inputMode = 'decimal'), // a finger wants the keyboard
    onKeyDown: (event: KeyboardEvent) => {
      if (!LINE_ENDS.includes(event.key) || event.isComposing || event.shiftKey) return;
      const line = value();
      const isBlank = line.trim() === '';
      if (isBlank && (event.key === 'Tab' || !isScaleHeard())) return;
      const isTyped = asked.current === null && line === line.trim() && readNumber(line).kind !== 'none';
      if (!isBlank && isTyped) return void (before.current = line);
      event.preventDefault();
      event.stopPropagation();
      if (!isBlank) void take(line);
    },
  };
}

/** Why a text is no answer to the field; undefined when it is one. */
function whyNot(field: FieldFacts, text: string): string | undefined {
  const read = field.read?.(text);
  return read && !read.ok ? (read.why ?? 'That is no answer here.') : undefined;
}

/** The field that was left last without a next one: a row that is drawn later takes the focus from it. */
let lastLeft: HTMLInputElement | null = null;

/** To the next empty field for a weight; else on, as the sheet or the step does. */
function goOn(box: HTMLInputElement): void {
  const within = box.closest('dialog') ?? document;
  const fields = [...within.querySelectorAll<HTMLInputElement>('input[data-weighed]')];
  const next = fields.slice(fields.indexOf(box) + 1).find(({ value }) => value === '');
  if (next) return next.focus();
  lastLeft = box;
  if (box.form) box.form.requestSubmit();
  else box.dispatchEvent(new CustomEvent(WEIGHED, { bubbles: true }));
}

/** Hears the cable; and where a scale that types was heard before, the field has the focus when its screen comes. */
function useArrival({ field: { weighed }, box, text }: Pick<Box, 'field' | 'box' | 'text'>, take: Hands['take']): void {
  const latest = useRef(take);
  latest.current = take;
  useLayoutEffect(() => {
    if (!weighed) return;
    const input = box.current!;
    const onCable = (event: Event) => void latest.current((event as CustomEvent<string>).detail);
    input.addEventListener(CABLE_LINE, onCable); // before a line can come
    return () => input.removeEventListener(CABLE_LINE, onCable);
  }, []);
  useEffect(() => {
    if (!weighed) return;
    const input = box.current!;
    const now = document.activeElement;
    const isFree = now === lastLeft || !now?.matches('input, textarea');
    if (isScaleHeard() && text === '' && isFree) input.focus({ preventScroll: true });
  }, []);
}
