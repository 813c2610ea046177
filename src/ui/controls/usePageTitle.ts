import { useEffect } from 'preact/hooks';

/** Names the page in the window, in the history, and for who has it read aloud (WCAG 2.4.2). */
export function usePageTitle(title: string): void {
  useEffect(() => void (document.title = `${title} – Minim`), [title]);
}
