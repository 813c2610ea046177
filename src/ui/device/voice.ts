import { onFirstTouch } from './firstTouch';

let waiting = ''; // said when the browser has found its voices

const engine: SpeechSynthesis | undefined = window.speechSynthesis;
engine?.addEventListener?.('voiceschanged', () => waiting && say(waiting));
onFirstTouch(() => engine?.speaking || say(waiting || ' ')); // an iPhone speaks only after it has spoken once in a touch

/** Says a sentence with a voice that needs no network, and breaks off the one before. False when there is no such voice. */
export function say(text: string): boolean {
  try {
    const voice = offlineVoice();
    waiting = voice ? '' : text;
    if (!voice) return false;
    const sentence = new SpeechSynthesisUtterance(text);
    sentence.voice = voice;
    sentence.lang = voice.lang;
    hush();
    engine!.speak(sentence);
    return true;
  } catch {
    return false; // what is said stands on the screen too
  }
}

/** Breaks off what is being said. */
export function hush(): void {
  waiting = '';
  if (engine?.speaking || engine?.pending) engine.cancel();
}

function offlineVoice(): SpeechSynthesisVoice | undefined {
  const ours = new RegExp(`^${document.documentElement.lang}([-_]|$)`, 'i');
  const fit = engine?.getVoices().filter(({ localService, lang }) => localService && ours.test(lang)) ?? [];
  return fit.find((voice) => voice.default) ?? fit[0];
}
