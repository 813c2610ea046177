import type { KeyAction, Settings } from '../../records/kind/settings';

/**
 * What presenter remotes, shutter buttons and headphones send, as far as no typed line can hold it. Enter and Space are the pad's own; a letter
 * or sign counts once it was taught.
 */
const usual: Readonly<Record<string, KeyAction>> = {
  PageDown: 'drop',
  ArrowRight: 'drop',
  ArrowDown: 'drop',
  AudioVolumeUp: 'drop',
  MediaPlayPause: 'drop',
  PageUp: 'undo',
  ArrowLeft: 'undo',
  ArrowUp: 'undo',
  AudioVolumeDown: 'undo',
  MediaTrackPrevious: 'undo',
  MediaTrackNext: 'next',
};

/** What a key does in a run: as it was taught, else as usual. */
export function actionOf(name: string, taught: Settings['keys'] = {}): KeyAction | undefined {
  return taught[name] ?? usual[name];
}
