import type { Page } from 'playwright-core';
import type { Inspector } from './inspect';
import { settle } from './settle';

/** How a run is walked: what is chosen and typed where the first answer will not do. */
export interface Path {
  readonly name: string;
  /** Words of choices, rows and buttons that are taken before others. */
  readonly prefer?: readonly RegExp[];
  /** Texts by the name of the field. */
  readonly types?: Readonly<Record<string, string>>;
  /** How the run is reached, where it does not begin by itself. */
  readonly begin?: (page: Page) => Promise<void>;
  /** Options of slots by the name of the field, taken whatever is in them. */
  readonly slots?: Readonly<Record<string, RegExp>>;
  /** What is done, once, at the step whose instruction contains these words, instead of going on. */
  readonly at?: readonly (readonly [say: RegExp, act: (page: Page) => Promise<void>])[];
  readonly steps?: number;
  /** False where the run has no end. */
  readonly ends?: false;
}

/** Walks the run that is on the screen to its record, and has every step inspected, with its sentence when an answer is missing. */
export async function stroll(page: Page, path: Path, { inspect, note }: Inspector): Promise<void> {
  const once = new Set<RegExp>();
  let last = '';
  for (let i = 0; i < (path.steps ?? 30); i++) {
    await page.locator('.run .say, .record, .bench, .labels').first().waitFor();
    if (await page.locator('.labels').count()) return inspect(`labels after ${path.name}`); // of several vials
    if (await page.locator('.bench').count()) return; // a run that keeps nothing
    if (await page.locator('.record').count()) return inspect(`record after ${path.name}`);
    const here = await stepName(page, path);
    if (page.url() !== last && !(await instructionHeld(page))) note(here, 'focus', ['is not on the instruction']);
    last = page.url();
    await inspect(here);
    const said = (await page.locator('.say').first().textContent()) ?? '';
    const special = path.at?.find(([words]) => words.test(said) && !once.has(words));
    if (special) {
      once.add(special[0]);
      await special[1](page);
      await settle(page);
      continue;
    }
    await answerAndLeave(page, path, () => inspect(`${here}, incomplete`));
  }
  if (path.ends !== false)
    note(path.name, 'walk', [`did not end: ${await page.locator('.say').first().textContent()}`]);
}

/** Whether the focus has come to the instruction, or to the one field that a step begins with; the address may change a moment before the screen does. */
async function instructionHeld(page: Page): Promise<boolean> {
  const held = page.locator('.run .say:focus, .run .naming input:focus, .run .questions input:focus').first();
  return held.waitFor({ timeout: 20_000 }).then(
    () => true,
    () => false,
  );
}

/** The task and the step, without what differs from run to run. */
async function stepName(page: Page, path: Path): Promise<string> {
  const step = decodeURIComponent(page.url().split('/').at(-1) ?? '');
  return `${path.name.split(':')[0]} ${step.replace(/[0-9a-f]{8}-[-0-9a-f]+/g, '#').replace(/\d+/g, '#')}`;
}

async function answerAndLeave(page: Page, path: Path, onRefused: () => Promise<void>): Promise<void> {
  const before = page.url();
  const hand = { prefer: (path.prefer ?? []).map(({ source }) => source), types: path.types ?? {} };
  await page.evaluate(answer, { ...hand, all: false });
  await fillSlots(page, path);
  await page.evaluate(drip);
  await settle(page);
  if (page.url() !== before) return;
  await tapMain(page);
  if (page.url() !== before || !(await page.locator('.run [role=alert]').count())) return;
  await onRefused();
  await page.evaluate(answer, { ...hand, all: true });
  await settle(page);
  if (page.url() === before) await tapMain(page);
}

/** Fills the slots of a card that are empty, with what is liked, and types what the path types. */
async function fillSlots(page: Page, path: Path): Promise<void> {
  const prefer = (path.prefer ?? []).map(({ source }) => source);
  await page.evaluate(takePills, prefer);
  await settle(page);
  const slots = page.locator('.run .slot[data-name]');
  for (let i = 0; i < (await slots.count()); i++) {
    const slot = slots.nth(i);
    const name = (await slot.getAttribute('data-name')) ?? '';
    const text = path.types?.[name];
    const wanted = path.slots?.[name];
    const isOpen = await slot.evaluate((one) => one.matches('.empty'));
    if (text === undefined && !isOpen && (!wanted || wanted.test((await slot.textContent()) ?? ''))) continue;
    await slot.evaluate((one) => (one as HTMLElement).click());
    await page.locator('dialog[open]').waitFor();
    const prefer = [...(wanted ? [wanted] : []), ...(path.prefer ?? [])].map(({ source }) => source);
    await page.evaluate(takeFromSheet, { prefer, text: text ?? '2' });
    await page.locator('dialog[open]').waitFor({ state: 'detached' });
    await settle(page);
  }
}

/** Takes an option where the card shows them itself; runs inside the page. */
function takePills(prefer: string[]): void {
  for (const pills of document.querySelectorAll('.run .pills:not(:has([aria-pressed=true]))')) {
    const all = [...pills.querySelectorAll<HTMLElement>('button')];
    const liked = prefer.map((source) => all.find((one) => new RegExp(source).test(one.textContent ?? '')));
    (liked.find((one) => one) ?? all[0]!).click();
  }
}

/** Takes an option of the open sheet, or types; runs inside the page. */
function takeFromSheet({ prefer, text }: { prefer: string[]; text: string }): void {
  const sheet = document.querySelector('dialog[open]')!;
  const rows = [...sheet.querySelectorAll<HTMLElement>('.sheet-row')];
  const liked = prefer.map((source) => rows.find((row) => new RegExp(source).test(row.textContent ?? '')));
  if (rows.length > 0) return (liked.find((row) => row) ?? rows[0]!).click();
  const box = sheet.querySelector('input')!;
  box.value = text;
  box.dispatchEvent(new Event('input', { bubbles: true }));
  setTimeout(() => sheet.querySelector<HTMLElement>('.main')!.click(), 300); // when it is stored
}

async function tapMain(page: Page): Promise<void> {
  const before = page.url();
  await page.evaluate(() => document.querySelector<HTMLElement>('.run .main')?.click());
  await page
    .waitForFunction((url) => location.href !== url || document.querySelector('.run [role=alert]'), before, {
      timeout: 1500,
      polling: 30,
    })
    .catch(() => undefined);
  await settle(page);
}

/** Answers what the step asks, as a quick hand would; runs inside the page. */
function answer({ prefer, types, all }: { prefer: string[]; types: Record<string, string>; all: boolean }): void {
  const likes = prefer.map((source) => new RegExp(source));
  const liked = <E extends Element>(from: readonly E[]) => {
    for (const like of likes) {
      const hit = from.find((each) => like.test(each.textContent ?? ''));
      if (hit) return hit;
    }
    return undefined;
  };
  const choose = (rows: readonly HTMLElement[]) => (liked(rows) ?? rows[0])?.click();
  const every = (selector: string) => [...document.querySelectorAll<HTMLElement>(selector)];

  for (const box of document.querySelectorAll<HTMLInputElement>(
    '.run input:not([type=radio], [type=search], [type=date])',
  )) {
    const wanted =
      types[box.name] ?? (all && box.value === '' ? (box.inputMode === 'text' ? 'made up' : '2') : undefined);
    if (wanted === undefined || box.value === wanted) continue;
    box.value = wanted;
    box.dispatchEvent(new Event('input', { bubbles: true }));
  }
  const exact = every('.offers .second').find(({ textContent }) => /^(Exactly|Both exactly)/.test(textContent ?? ''));
  exact?.click();
  const rows = every('.pick-rows .choice[aria-pressed]');
  if (rows.length > 0 && !rows.some((row) => row.getAttribute('aria-pressed') === 'true')) {
    const wanted = likes.length > 0 ? rows.filter((row) => likes.some((like) => like.test(row.textContent ?? ''))) : [];
    (wanted.length > 0 ? wanted : rows).slice(0, 3).forEach((row) => row.click());
  }
  const tiles = every('.code-tile');
  if (tiles.length > 0 && !tiles.some((tile) => tile.matches('.on'))) choose(tiles);
  for (const group of every('.run fieldset.choices')) {
    const rows = [...group.querySelectorAll<HTMLElement>('label.choice')];
    const chosen = rows.find((row) => row.matches('.chosen'));
    if (!chosen || (liked(rows) && liked(rows) !== chosen)) choose(rows);
  }
}

/** Lets drops fall until there are as many as are asked for, or taps what is put in order, no faster than a finger; runs inside the page. */
async function drip(): Promise<void> {
  const pause = (ms: number) => new Promise((wait) => setTimeout(wait, ms));
  const ordered = /From least|least to most/.test(document.querySelector('.say')?.textContent ?? '');
  for (const tile of ordered ? document.querySelectorAll<HTMLElement>('.code-tile:not(.on)') : []) {
    tile.click();
    await pause(70);
  }
  const pad = document.querySelector<HTMLElement>('.pad, .dip-pad, .plus');
  const count = () => Number(document.querySelector('.pad .count')?.textContent ?? 0);
  const wish = Math.min(40, Number(/of (\d+)/.exec(document.querySelector('.pad .live')?.textContent ?? '')?.[1] ?? 2));
  for (let i = 0; pad?.isConnected && i < wish && count() < wish; i++) {
    pad.click();
    await pause(pad.matches('.dip-pad') ? 450 : 70);
    if (pad.matches('.dip-pad')) break;
  }
}
