import type { KeyAction, Settings } from '../../records/kind/settings';

/** What presenter remotes, shutter buttons and headphones send. Enter and Space are the pad's own. */
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
  b: 'next',
  '.': 'next',
  MediaTrackNext: 'next', // presenters darken the screen with B or a full stop
};

/** What a key does in a run: as it was taught, else as usual. */
export function actionOf(name: string, taught: Settings['keys'] = {}): KeyAction | undefined {
  return taught[name] ?? usual[name];
}
