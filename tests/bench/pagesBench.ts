import type { CDPSession, Page } from 'playwright-core';
import { newProfile, openPhone, serve } from '../browser/phone';
import { bottleId, largeWorkshop, stock, vialId } from './largeWorkshop';

const SETTLED = 2500; // ms after a start; by then what was begun with it is done
const AWAY = '#/settings';

interface Times {
  readonly page: string;
  /** From the address to the frame that shows the page: the first time in a session, the second, and after a record was changed. */
  readonly first: number;
  readonly again: number;
  /** From a new document to that frame. */
  readonly cold: number;
  /** The same number of rows read from the same store and drawn by a bare page, warm and from a new document. */
  readonly bare: number;
  readonly rows: number;
  /** JS heap after it, MB. */
  readonly heapMb: number;
}

/** What is opened: an address, and what is typed into its search box, if that is what is measured. */
interface Asked {
  readonly page: string;
  readonly hash: string;
  readonly words?: string;
}

function pagesOf(vials: number): Asked[] {
  const vial = `record/${vialId(vials - 1)}`;
  const bottle = `record/${bottleId((vials - 1) % 200)}`;
  const plain = ['', 'shelf', 'shelf/bottle', 'shelf/due', 'shelf/shopping', 'shelf/archived', 'book', 'labels', 'keeping', 'devices'].map((hash) => ({ page: hash || 'bench', hash })); // prettier-ignore
  const things = ['', '/paper', '/trace', '/edit', '/weigh'].map((sub) => ({ page: `a vial${sub}`, hash: vial + sub }));
  const tasks = ['dilute', 'count', 'dose', 'layer', 'calibrate', 'blind', 'batch', 'lookup', 'proportions'].map((task) => ({ page: `new ${task}`, hash: `new/${task}` })); // prettier-ignore
  return [
    ...plain,
    ...things,
    { page: 'a bottle', hash: bottle },
    { page: 'a bottle/trace', hash: `${bottle}/trace` },
    { page: 'one label', hash: `labels/${vialId(vials - 1)}` },
    ...tasks,
    { page: 'search of the Shelf', hash: 'shelf', words: 'ethyl' },
    { page: 'search of the Book', hash: 'book', words: 'ethyl' },
  ];
}

/**
 * How long each page takes with many vials and ended runs, beside a bare page that reads and draws as many rows of the same store, in
 * the same run; ms, and their ratio. After the name: vials, runs, only the pages with that in their name, and the folder of the app as built.
 */
export async function pagesBench(vials = '10000', runs = '50000', only = '', dist = 'dist'): Promise<void> {
  const [site, profile] = [await serve(dist), newProfile()];
  const { page, context } = await openPhone(profile.dir, { home: site.url });
  try {
    await page.addInitScript('globalThis.__name = (named) => named'); // left in functions by what runs this file
    await page.addInitScript(whenShown);
    await page.goto(site.url);
    await page.locator('main').waitFor();
    await stock(page, largeWorkshop(Number(vials), Number(runs)));
    await page.reload();
    await page.waitForTimeout(20_000); // the second copy is written from the store meanwhile
    const browser = await page.context().newCDPSession(page);
    for (const asked of pagesOf(Number(vials)).filter((one) => one.page.includes(only))) {
      const times = await timesOf(page, browser, site.url, asked);
      console.log(JSON.stringify({ bench: 'pages', vials: Number(vials), runs: Number(runs), ...times }));
    }
  } finally {
    await context.close();
    await site.stop();
    profile.forget();
  }
}

async function timesOf(
  page: Page,
  browser: CDPSession,
  home: string,
  { page: name, hash, words }: Asked,
): Promise<Times> {
  const opened = words === undefined ? `#/${hash}` : AWAY;
  await page.goto('about:blank');
  await page.goto(home + opened);
  const cold = await page.evaluate(() => (window as never as Seen).shown());
  await page.goto('about:blank');
  await page.goto(home + AWAY);
  await page.waitForTimeout(SETTLED);
  const open = () => (words === undefined ? openAt(page, hash) : searchAt(page, hash, words));
  const first = await open();
  await page.evaluate((away) => void (location.hash = away), AWAY);
  await page.waitForTimeout(700);
  const again = await open();
  const rows = Math.max(1, await page.locator('main li').count());
  const { usedSize } = (await browser.send('Runtime.getHeapUsage')) as { usedSize: number };
  const bare = await page.evaluate(bareRows, { rows, from: hash.startsWith('book') ? 'run' : 'vial' });
  const ms = Math.round;
  return { page: name, first: ms(first), again: ms(again), cold: words === undefined ? ms(cold) : NaN, bare: ms(bare), rows, heapMb: ms(usedSize / 1e6) }; // prettier-ignore
}

interface Seen {
  /** Resolves with the moment of the frame that shows the page of the address, ms since the document began. */
  shown(): Promise<number>;
}

/** In the page, before its scripts. */
function whenShown(): void {
  const isThere = () => {
    const main = document.querySelector('main');
    if (!main || main.getAttribute('aria-busy') === 'true' || main.closest('[hidden]')) return false;
    if (document.documentElement.dataset['elsewhere'] !== undefined) return false;
    const isAway = main.querySelector('h1')?.textContent === 'Settings';
    if (isAway !== location.hash.startsWith('#/settings')) return false;
    if (location.hash.length > 2 && main.classList.contains('bench')) return false;
    if (location.hash.startsWith('#/book') && !main.querySelector('.page-of-book, .quiet')) return false;
    if (/^#\/new/.test(location.hash)) return false;
    return main.textContent!.trim().length > 4;
  };
  (window as never as Seen).shown = () =>
    new Promise((resolve) => {
      const { port1, port2 } = new MessageChannel();
      port1.onmessage = () => resolve(performance.now());
      const look = () => {
        if (!isThere()) return false;
        watch.disconnect();
        requestAnimationFrame(() => port2.postMessage(null));
        return true;
      };
      const watch = new MutationObserver(look);
      if (!look()) watch.observe(document, { childList: true, subtree: true, attributes: true, characterData: true });
    });
}

function openAt(page: Page, hash: string): Promise<number> {
  return page.evaluate(async (to) => {
    const began = performance.now();
    location.hash = to === '' ? '#/' : `#/${to}`;
    await new Promise((done) => addEventListener('hashchange', done, { once: true }));
    return (await (window as never as Seen).shown()) - began;
  }, hash);
}

/** Opens the list, lets it come to rest, and types all words at once; until the list shows other rows. */
async function searchAt(page: Page, hash: string, words: string): Promise<number> {
  await openAt(page, hash);
  await page.waitForTimeout(700);
  const took = await page.evaluate(async (text) => {
    const box = document.querySelector<HTMLInputElement>('.search-box input')!;
    const { port1, port2 } = new MessageChannel();
    const done = new Promise((resolve) => (port1.onmessage = resolve));
    const began = performance.now();
    box.value = text;
    box.dispatchEvent(new InputEvent('input', { bubbles: true }));
    await new Promise((resolve) => queueMicrotask(() => resolve(null)));
    requestAnimationFrame(() => requestAnimationFrame(() => port2.postMessage(null)));
    await done;
    return performance.now() - began;
  }, words);
  await page.evaluate(() => {
    const box = document.querySelector<HTMLInputElement>('.search-box input')!;
    box.value = '';
    box.dispatchEvent(new InputEvent('input', { bubbles: true }));
  });
  return took;
}

/** In the page, in place of the app: so many records of a kind, the last ones, read one by one and drawn as rows of two lines. */
function bareRows({ rows, from }: { rows: number; from: string }): Promise<number> {
  return new Promise((resolve, reject) => {
    document.body.replaceChildren();
    const began = performance.now();
    const opening = indexedDB.open('minim');
    opening.onerror = () => reject(opening.error);
    opening.onsuccess = () => {
      const list = document.createElement('ul');
      const walk = opening.result.transaction('records').objectStore('records').index('kind').openCursor(IDBKeyRange.only(from), 'prev'); // prettier-ignore
      walk.onsuccess = () => {
        const at = walk.result;
        if (at && list.childElementCount < rows) {
          const row = document.createElement('li');
          row.append(Object.assign(document.createElement('b'), { textContent: at.value.name ?? at.value.title }));
          row.append(Object.assign(document.createElement('span'), { textContent: at.value.made }));
          list.append(row);
          return at.continue();
        }
        opening.result.close();
        document.body.append(list);
        const { port1, port2 } = new MessageChannel();
        port1.onmessage = () => resolve(performance.now() - began);
        requestAnimationFrame(() => port2.postMessage(null));
      };
    };
  });
}
