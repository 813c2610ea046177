import type { CDPSession, Page } from 'playwright-core';
import { preview } from 'vite';
import { newRecord } from '../../src/records/shelf';
import { shelve, vialRecord } from '../browser/benchRecords';
import { newProfile, openPhone } from '../browser/phone';
import { buildFloor } from './floorPage';

export const RATE = 6; // CPU slowed by so much, as on a slow phone
const STARTS = 10;
const TAPS = 40;
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

/** Cold offline starts and taps of the app beside a bare page, both in this run: medians in ms, and their ratio. */
export async function phoneBench(): Promise<void> {
  const app = await measured('dist', true);
  const floor = await measured(await buildFloor(), false);
  for (const what of ['paint', 'usable', 'data', 'tap', 'tap95'] as const)
    console.log(
      JSON.stringify({
        bench: 'phone',
        what,
        rate: RATE,
        ms: ms(app[what]),
        floorMs: ms(floor[what]),
        ratio: Number((app[what] / floor[what]).toFixed(2)),
      }),
    );
}

async function measured(outDir: string, isApp: boolean): Promise<Start & { tap: number; tap95: number }> {
  const server = await preview({
    base: '/bench/',
    build: { outDir },
    preview: { port: 0, host: '127.0.0.1' },
    logLevel: 'error',
  });
  const home = server.resolvedUrls!.local[0]!;
  const profile = newProfile();
  try {
    const phone = await openPhone(profile.dir, { home });
    await phone.page.goto(home);
    await phone.page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
    if (isApp) await shelve(phone.page, stocked());
    await phone.page.reload();
    await phone.page.waitForTimeout(1500);
    await phone.context.close();
    const starts: Start[] = [];
    for (let i = 0; i < STARTS; i++) starts.push(await coldStart(profile.dir, home, isApp));
    const taps = await tapTimes(profile.dir, home, isApp);
    const [paint, usable, data] = (['paint', 'usable', 'data'] as const).map((what) =>
      median(starts.map((start) => start[what])),
    );
    return { paint: paint!, usable: usable!, data: data!, tap: median(taps), tap95: median(taps, 0.95) };
  } finally {
    await server.close();
    profile.forget();
  }
}

/** 1,000 vials, 5,000 ended runs and one open run. */
function stocked() {
  const vials = Array.from({ length: 1000 }, (_, i) => vialRecord({ code: `V${i}`, name: `material ${i}` }));
  const runs = Array.from({ length: 5000 }, (_, i) =>
    newRecord('run', { task: 'dilute', kept: [], title: `Dilute ${i}`, endedAt: '2026-01-01T00:00:00Z' }),
  );
  return [...vials, ...runs, newRecord('run', { task: 'dilute', open: 1, kept: [], title: 'Dilute · paused' })];
}

async function coldStart(dir: string, home: string, isApp: boolean): Promise<Start> {
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
export async function slow(page: Page): Promise<CDPSession> {
  const session = await page.context().newCDPSession(page);
  await session.send('Emulation.setCPUThrottlingRate', { rate: RATE });
  return session;
}

/** The page tells it by itself: asking it again and again would slow it down. */
const shown = (page: Page) => page.waitForEvent('console', (message) => message.text() === 'shown');

/**
 * From the finger on the glass to the frame that shows the new count, stored already in the app; ms each. The touches come from the
 * browser, as a finger's do: the driver's own tap looks around in the page first, and that is slowed down and counted, too.
 */
async function tapTimes(dir: string, home: string, isApp: boolean): Promise<number[]> {
  const phone = await openPhone(dir, { home });
  await phone.page.goto(home);
  if (isApp) await toThePad(phone.page);
  const { x, y, width, height } = (await phone.page.locator('.pad').boundingBox())!;
  const finger = { x: x + width / 2, y: y + height / 2 };
  const browser = await slow(phone.page);
  await phone.page.evaluate(noteTaps);
  for (let i = 1; i <= TAPS; i++) {
    const done = shown(phone.page);
    await browser.send('Input.dispatchTouchEvent', { type: 'touchStart', touchPoints: [finger] });
    await phone.page.waitForTimeout(HELD);
    await browser.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] });
    await done;
    await phone.page.waitForTimeout(APART);
  }
  const times = await phone.page.evaluate(() => (window as never as { times: number[] }).times);
  await phone.context.close();
  return times;
}

/** In the page. A message ends the frame, not a timer: those wait until the finger is lifted. */
function noteTaps(): void {
  const times: number[] = ((window as never as { times: number[] }).times = []);
  const { port1, port2 } = new MessageChannel();
  let down = 0;
  document
    .querySelector('.pad')!
    .addEventListener('pointerdown', (event) => (down = event.timeStamp), { capture: true });
  port1.onmessage = () => {
    times.push(performance.now() - down);
    console.info('shown');
  };
  new MutationObserver(() => requestAnimationFrame(() => port2.postMessage(null))).observe(
    document.querySelector('.count')!,
    { childList: true, subtree: true, characterData: true },
  );
}

async function toThePad(page: Page): Promise<void> {
  await page.locator('.tasks .card', { hasText: 'Dilute' }).tap();
  for (const words of ['V999', '', '10 mL', 'ethanol 96', 'Food grade', 'Syringe', 'By drops', 'not weighed', '', '']) {
    const before = page.url();
    if (words) await page.locator('label.choice', { hasText: words }).first().tap();
    else await page.locator('.actions .main').tap();
    await page.waitForURL((url) => url.href !== before); // the next step is there
  }
  await page.locator('.pad').waitFor();
}
