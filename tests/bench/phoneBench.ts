import type { CDPSession, Page } from 'playwright-core';
import { preview } from 'vite';
import { newRecord } from '../../src/records/shelf';
import { shelve, vialRecord } from '../browser/benchRecords';
import { diluteFromBench } from '../browser/dilution';
import { newProfile, openPhone, type Phone } from '../browser/phone';
import { buildFloor } from './floorPage';

export const RATE = 6; // CPU slowed by so much, as on a slow phone
const STARTS = 10;
const ROUNDS = 4; // of taps
const TAPS = 10; // in a round
const HELD = 80; // ms a finger stays on the glass: our choice, common in a tap
const APART = 200; // ms between two taps: a hand is no faster, and what is tidied up after one is not counted with the next

interface Start {
  paint: number;
  usable: number;
  data: number;
}

export const median = (numbers: readonly number[], share = 0.5) =>
  [...numbers].sort((a, b) => a - b)[Math.floor((numbers.length - 1) * share)]!;
const ms = (x: number) => Math.round(x);

type Times = Start & { tap: number; tap95: number };

/**
 * Cold offline starts and taps of the app beside a bare page that reads the same store and keeps its taps in two copies, as the app
 * does, and one that keeps them once: medians in ms, and the ratio to the first. They take turns, start by start and round by round of
 * taps, so that a slow minute of the machine meets all. After the name: how many starts.
 */
export async function phoneBench(times = String(STARTS)): Promise<void> {
  const bare = ['two copies', 'one copy'] as const;
  const arms = [await armOf('dist', true)];
  for (const copies of bare) arms.push(await armOf(await buildFloor(copies), false));
  try {
    const starts = await inTurn(arms, Number(times), coldStart);
    const pages = await Promise.all(arms.map(openPad));
    const taps = await inTurn(pages, ROUNDS, tapSome);
    await Promise.all(pages.map(({ phone }) => phone.context.close()));
    const [app, floor, once] = arms.map((_, i) => timesOf(starts[i]!, taps[i]!.flat())) as [Times, Times, Times];
    for (const what of ['paint', 'usable', 'data', 'tap', 'tap95'] as const) {
      const ratio = Number((app[what] / floor[what]).toFixed(2));
      const told = { ms: ms(app[what]), floorMs: ms(floor[what]), floorOnceMs: ms(once[what]), ratio };
      console.log(JSON.stringify({ bench: 'phone', what, rate: RATE, ...told }));
    }
  } finally {
    for (const arm of arms) await arm.stop();
  }
}

/** What each of them gives, that many times, one after the other. */
async function inTurn<A, T>(all: readonly A[], times: number, work: (one: A) => Promise<T>): Promise<T[][]> {
  const found: T[][] = all.map(() => []);
  for (let i = 0; i < times; i++) for (const [k, one] of all.entries()) found[k]!.push(await work(one));
  return found;
}

function timesOf(starts: readonly Start[], taps: readonly number[]): Times {
  const of = (what: keyof Start) => median(starts.map((start) => start[what]));
  return { paint: of('paint'), usable: of('usable'), data: of('data'), tap: median(taps), tap95: median(taps, 0.95) };
}

/** One of the two: where it is served, and the phone that has it. */
interface Arm {
  readonly isApp: boolean;
  readonly dir: string;
  readonly home: string;
  stop(): Promise<void>;
}

async function armOf(outDir: string, isApp: boolean): Promise<Arm> {
  const server = await preview({
    base: '/bench/',
    build: { outDir },
    preview: { port: 0, host: '127.0.0.1' },
    logLevel: 'error',
  });
  const home = server.resolvedUrls!.local[0]!;
  const profile = newProfile();
  const phone = await openPhone(profile.dir, { home });
  await phone.page.goto(home);
  await phone.page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
  await shelve(phone.page, stocked());
  await phone.page.reload();
  await phone.page.waitForTimeout(1500);
  await phone.context.close();
  const stop = () => server.close().then(profile.forget);
  return { isApp, dir: profile.dir, home, stop };
}

/** 1,000 vials, 5,000 ended runs and one open run. */
function stocked() {
  const vials = Array.from({ length: 1000 }, (_, i) => vialRecord({ code: `V${i}`, name: `material ${i}` }));
  const runs = Array.from({ length: 5000 }, (_, i) =>
    newRecord('run', { task: 'dilute', kept: [], title: `Dilute ${i}`, endedAt: '2026-01-01T00:00:00Z' }),
  );
  return [...vials, ...runs, newRecord('run', { task: 'dilute', open: 1, kept: [], title: 'Dilute · paused' })];
}

async function coldStart({ dir, home, isApp }: Arm): Promise<Start> {
  const phone = await openPhone(dir, { home });
  await phone.context.setOffline(true);
  await slow(phone.page);
  await phone.page.addInitScript(
    (data) => {
      const seen: Record<string, number> = ((window as never as { seen: object }).seen = {}) as never;
      new MutationObserver(() => {
        if (!seen['usable'] && document.querySelector('.tasks .card')) seen['usable'] = performance.now();
        if (!seen['data'] && document.querySelector(data))
          requestAnimationFrame(() => {
            if (seen['data']) return;
            seen['data'] = performance.now();
            setTimeout(() => console.info('shown'), 300);
          });
      }).observe(document, { childList: true, subtree: true, characterData: true });
    },
    isApp ? '.paused' : '.data',
  );
  const done = shown(phone.page);
  await phone.page.goto(home);
  await done;
  const start = await phone.page.evaluate(() => ({
    ...(window as never as { seen: { usable: number; data: number } }).seen,
    paint: performance.getEntriesByName('first-contentful-paint')[0]!.startTime,
  }));
  await phone.context.close();
  return start;
}

/** From here on the page runs as on a slow phone. */
export async function slow(page: Page): Promise<void> {
  const session = await page.context().newCDPSession(page);
  await session.send('Emulation.setCPUThrottlingRate', { rate: RATE });
}

/** The page tells it by itself: asking it again and again would slow it down. */
const shown = (page: Page) => page.waitForEvent('console', (message) => message.text() === 'shown');

interface Pad {
  readonly phone: Phone;
  readonly browser: CDPSession;
  readonly finger: { readonly x: number; readonly y: number };
}

/** The page with its pad on the screen, ready to be tapped. */
async function openPad({ dir, home, isApp }: Arm): Promise<Pad> {
  const phone = await openPhone(dir, { home });
  await phone.page.goto(home);
  if (isApp) await toThePad(phone.page);
  const { x, y, width, height } = (await phone.page.locator('.pad').boundingBox())!;
  const browser = await phone.page.context().newCDPSession(phone.page);
  await phone.page.evaluate(noteTaps);
  return { phone, browser, finger: { x: x + width / 2, y: y + height / 2 } };
}

/** A page that is slowed down keeps a core busy even when nothing happens: the one that waits for its turn is not. */
async function tapSome(pad: Pad): Promise<number[]> {
  const times: number[] = [];
  await pad.browser.send('Emulation.setCPUThrottlingRate', { rate: RATE });
  for (let i = 0; i < TAPS; i++) times.push(await tapOnce(pad));
  await pad.browser.send('Emulation.setCPUThrottlingRate', { rate: 1 });
  return times;
}

/**
 * From the finger on the glass to the frame that shows the new count, stored already in the app; ms. The touch comes from the
 * browser, as a finger's does: the driver's own tap looks around in the page first, and that is slowed down and counted, too.
 */
async function tapOnce({ phone: { page }, browser, finger }: Pad): Promise<number> {
  const done = shown(page);
  await browser.send('Input.dispatchTouchEvent', { type: 'touchStart', touchPoints: [finger] });
  await page.waitForTimeout(HELD);
  await browser.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] });
  await done;
  await page.waitForTimeout(APART);
  return page.evaluate(() => (window as never as { took: number }).took);
}

/** In the page. A message ends the frame, not a timer: those wait until the finger is lifted. */
function noteTaps(): void {
  const { port1, port2 } = new MessageChannel();
  let down = 0;
  document
    .querySelector('.pad')!
    .addEventListener('pointerdown', (event) => (down = event.timeStamp), { capture: true });
  port1.onmessage = () => {
    (window as never as { took: number }).took = performance.now() - down;
    console.info('shown');
  };
  new MutationObserver(() => requestAnimationFrame(() => port2.postMessage(null))).observe(
    document.querySelector('.count')!,
    { childList: true, subtree: true, characterData: true },
  );
}

async function toThePad(page: Page): Promise<void> {
  await diluteFromBench(page, { bottle: 'V999', solvent: 'ethanol 96', food: 'Food grade' });
  await page.locator('.pad').waitFor();
}
