import type { Page } from 'playwright-core';
import { addFirstBottle } from '../browser/firstBottle';
import { newProfile, openPhone, serve } from '../browser/phone';
import { median, RATE, slow } from './phoneBench';

const TIMES = 3;
const REST_MS = 1200; // between two touches: all that the last one set going has come to the screen by then

/**
 * Seconds of the keystroke-level model: Card, Moran & Newell, Communications of the ACM 23 (1980) 396–410,
 * doi:10.1145/358886.358895. Read in tables that cite the paper, not in the paper itself. They hold for somebody who knows the
 * way and makes no mistake; pointing is by mouse there, and a finger is hardly slower.
 */
const MODEL = { point: 1.1, press: 0.2, home: 0.4, think: 1.35 };
const KEY = { 'average typist': 0.28, 'worst typist': 1.2 };

interface Answer {
  what: 'tap' | 'key';
  at: number;
  ms: number;
}
declare global {
  var answers: Answer[];
}

/** Seconds from the empty Shelf to the first bottle on it: what the screen makes one wait for, and what the hand takes by the model. */
export async function firstBottleBench(): Promise<void> {
  const site = await serve();
  const runs: Answer[][] = [];
  for (let i = 0; i < TIMES; i++) runs.push(await added(site.url));
  await site.stop();
  const waits = runs.map((answers) => answers.reduce((sum, { ms }) => sum + ms, 0) / 1000);
  const [taps, keys] = (['tap', 'key'] as const).map((kind) => runs[0]!.filter(({ what }) => what === kind).length);
  const longestMs = Math.round(Math.max(...runs.flat().map(({ ms }) => ms)));
  const told = { bench: 'first bottle', taps, keys };
  console.log(JSON.stringify({ ...told, what: 'screen', rate: RATE, s: seconds(median(waits)), longestMs }));
  for (const [typist, key] of Object.entries(KEY)) {
    const hand = handSeconds(taps!, keys!, key);
    const whole = { s: seconds(hand), withScreenS: seconds(hand + median(waits)) };
    console.log(JSON.stringify({ ...told, what: 'hand', model: 'Card, Moran & Newell 1980', typist, ...whole }));
  }
}

const seconds = (s: number) => Number(s.toFixed(1));

/** The hand comes to the phone once; a thought before every tap and before the word, none left out as foreseen. */
function handSeconds(taps: number, keys: number, key: number): number {
  const { point, press, home, think } = MODEL;
  return home + taps * (think + point + press) + think + keys * key;
}

async function added(home: string): Promise<Answer[]> {
  const profile = newProfile();
  try {
    const phone = await openPhone(profile.dir, { home, width: 360, height: 740 });
    await phone.page.addInitScript(timeAnswers);
    await phone.page.goto(home);
    await phone.page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
    await phone.page.reload(); // as an installed app opens: all of it comes from the phone
    await phone.context.setOffline(true);
    await phone.page.goto(`${home}#/shelf`);
    await phone.page.locator('.first-run').waitFor();
    await slow(phone.page);
    const answers = await answersTo(phone.page);
    await phone.context.close();
    return answers;
  } finally {
    profile.forget();
  }
}

async function answersTo(page: Page): Promise<Answer[]> {
  const rest = () => page.waitForTimeout(REST_MS);
  await rest();
  await addFirstBottle(page, rest);
  await rest();
  return page.evaluate(() => globalThis.answers);
}

/** Writes down, for each touch and key, the time from it to the frame that shows the last change it brought. */
function timeAnswers(): void {
  const answers: Answer[] = (globalThis.answers = []);
  const heard = { pointerdown: 'tap', keydown: 'key' } as const;
  for (const [type, what] of Object.entries(heard))
    addEventListener(
      type,
      ({ timeStamp: at }) => (document.documentElement.dataset['answers'] = String(answers.push({ what, at, ms: 0 }))),
      true,
    );
  new MutationObserver(() =>
    requestAnimationFrame(() =>
      setTimeout(() => {
        const last = answers.at(-1);
        if (last) last.ms = performance.now() - last.at;
      }),
    ),
  ).observe(document, { subtree: true, childList: true, characterData: true, attributes: true });
}
