import { usualSettings, type Settings } from '../../records/kind/settings';

type Look = Pick<Settings, 'theme' | 'hand'>;

/**
 * Shows the page by day or night and for the hand that holds the phone, with the bar of the browser in the same colour, and keeps
 * both where public/boot.js finds them before the page is painted.
 */
export function showLook({ theme, hand }: Look): void {
  const root = document.documentElement;
  root.dataset['theme'] = theme;
  root.dataset['hand'] = hand;
  for (const bar of document.querySelectorAll<HTMLMetaElement>('meta[name="theme-color"]')) {
    const own = bar.media.includes('dark') ? 'dark' : 'light';
    bar.content = BARS[theme === 'system' ? own : theme];
  }
  try {
    remember('theme', theme);
    remember('hand', hand);
  } catch {
    // no localStorage here: it is known when the settings have been read
  }
}

/** What is usual is not kept: a phone on which everything was erased holds nothing. */
function remember(name: keyof Look, value: string): void {
  if (value === usualSettings[name]) localStorage.removeItem(`minim-${name}`);
  else localStorage.setItem(`minim-${name}`, value);
}

/** --paper of ui/base.css; public/boot.js has them, too. */
const BARS = { light: '#f3efe4', dark: '#16120e' };
