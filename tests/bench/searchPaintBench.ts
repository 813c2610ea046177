import type { Page } from 'playwright-core';
import { preview } from 'vite';
import { shelve } from '../browser/benchRecords';
import { newProfile, openPhone } from '../browser/phone';
import { bigShelf } from './searchBench';

const BUDGET = 16; // ms from the key to the frame that shows its hits
const APART = 200; // ms between two keys: what is drawn after a pause is not counted with the next one
const queries = [
  'cardamom oil',
  'ethil butirate',
  'limonen',
  'fruity pineaple',
  'hexenol green',
  'aldehide',
  'lot 471',
];

/** From the key to the frame that shows its hits, on 5,000 records in a real browser, beside a bare field on the same page. */
export async function searchPaintBench(): Promise<void> {
  const server = await preview({
    base: '/bench/',
    preview: { port: 0, host: '127.0.0.1' },
    logLevel: 'error',
  });
  const home = server.resolvedUrls!.local[0]!;
  const profile = newProfile();
  const { page, context } = await openPhone(profile.dir, { home });
  try {
    await page.goto(home);
    await shelve(page, bigShelf());
    await page.goto(`${home}#/shelf`);
    await page.locator('.search-box input').waitFor();
    await page.waitForTimeout(2500);
    await watchKeys(page);
    const keys = await typed(page);
    await bareField(page);
    const floor = await typed(page);
    const ms = (times: readonly number[], share: number) =>
      Number([...times].sort((a, b) => a - b)[Math.floor((times.length - 1) * share)]!.toFixed(1));
    console.log(
      JSON.stringify({
        bench: 'Shelf search, key to paint',
        records: 5000,
        keys: keys.length,
        budgetMs: BUDGET,
        medianMs: ms(keys, 0.5),
        p95Ms: ms(keys, 0.95),
        floorMs: ms(floor, 0.5),
        floorP95Ms: ms(floor, 0.95),
        ratio: Number((ms(keys, 0.5) / ms(floor, 0.5)).toFixed(2)),
      }),
    );
  } finally {
    await context.close();
    await server.close();
    profile.forget();
  }
}

/** Notes for each key when its frame is painted: a message posted from the frame's callback comes after it. */
function watchKeys(page: Page): Promise<void> {
  return page.evaluate(() => {
    const painted = new MessageChannel();
    let down = 0;
    painted.port1.onmessage = () => (window as never as { keys: number[] }).keys.push(performance.now() - down);
    addEventListener(
      'keydown',
      ({ timeStamp }) => {
        down = timeStamp;
        requestAnimationFrame(() => painted.port2.postMessage(null));
      },
      true,
    );
  });
}

/** Types every query and gives the times of its keys, ms. */
async function typed(page: Page): Promise<number[]> {
  const box = page.locator('.search-box input');
  const times: number[] = [];
  for (const query of ['warm up', ...queries]) {
    await box.fill('');
    await box.focus();
    await page.waitForTimeout(2 * APART);
    await page.evaluate(() => ((window as never as { keys: number[] }).keys = []));
    await box.pressSequentially(query, { delay: APART });
    await page.waitForTimeout(APART);
    const keys = await page.evaluate(() => (window as never as { keys: number[] }).keys);
    if (query !== 'warm up') times.push(...keys);
  }
  return times;
}

/** In place of the app one field that shows what is typed. */
function bareField(page: Page): Promise<void> {
  return page.evaluate(() => {
    const [label, input, shown] = ['label', 'input', 'p'].map((name) => document.createElement(name));
    label!.className = 'search-box';
    label!.append(input!);
    input!.addEventListener('input', () => (shown!.textContent = (input as HTMLInputElement).value));
    document.body.replaceChildren(label!, shown!);
  });
}
