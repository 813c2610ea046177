import { useEffect } from 'preact/hooks';
import { shelf } from '../../records/shelf';
import type { Walk } from '../engine/task';

/** Voice, sounds, foot switch and remote in a run, as far as they are switched on; their code is loaded only then. */
export function useHandsBusy(walk: Walk, goOn: () => Promise<void>, shown: boolean): void {
  const settings = shelf.settings.value;
  const { speech, tick, remote, mediaKeys } = settings;
  useEffect(() => {
    const ends: (() => void)[] = [];
    let left = false;
    const begin = (start: () => () => void) => void (left || ends.push(start()));
    const lost = () => {}; // the run goes on by hand and eye
    if (shown && (speech || tick))
      import('./aloud').then(({ tellAloud }) => begin(() => tellAloud(walk, settings))).catch(lost);
    else if (shown) import('./overSound').then(({ soundOver }) => begin(() => soundOver(walk))).catch(lost);
    if (shown && (remote || mediaKeys))
      import('./keys').then(({ hearKeys }) => begin(() => hearKeys(walk, settings, goOn))).catch(lost);
    return () => {
      left = true;
      for (const end of ends) end();
    };
  }, [walk, shown, settings]);
}
