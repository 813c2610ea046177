import { createContext, type ComponentChildren, type ComponentType } from 'preact';
import { useContext } from 'preact/hooks';

/** What can be done about a fault: a backup, and loading the page again. The app provides it, since it knows the store. */
export const WaysOut = createContext<ComponentType<{ again: () => void }>>(() => null);

interface Props {
  /** One sentence on what went wrong and what is safe. */
  words: string;
  error: unknown;
  /** Tries the broken part once more. */
  again: () => void;
  /** Ways out of this place alone; they stand first. */
  children?: ComponentChildren;
}

/** Says that a part of the page broke, in one sentence, with the error's own words in small print and the ways out. */
export function FaultNotice({ words, error, again, children }: Props) {
  const Ways = useContext(WaysOut);
  return (
    <div class="fault">
      <p class="trouble" role="alert">
        {words}
      </p>
      <small>{faultText(error)}</small>
      {children}
      <Ways again={again} />
    </div>
  );
}

const LONGEST = 200; // letters; our choice: enough to find the place, and it fits a small screen

/** 'Refusal: “10/2026” is not a day': what a report should hold. Anything can be thrown, so anything is taken. */
export function faultText(error: unknown): string {
  const text = error instanceof Error ? `${error.name}: ${error.message}` : String(error);
  return text.length > LONGEST ? `${text.slice(0, LONGEST - 1)}…` : text;
}
