import type { Page } from 'playwright-core';
import { newRecord } from '../../src/records/shelf';
import { shelve, vialRecord } from '../browser/benchRecords';
import { addFirstBottle } from '../browser/firstBottle';
import type { hand } from '../browser/hand';

type Hand = ReturnType<typeof hand>;
type Answers = Readonly<Record<string, string>>;

interface Walk {
  readonly task: string;
  /** Touches of the first version without drops, and the most that are wanted now. */
  readonly first: number;
  readonly wanted: number;
  /** What is there before: not counted. */
  before?(h: Hand, page: Page): Promise<unknown>;
  go?(h: Hand, page: Page): Promise<unknown>;
}

const vials = ['CARD', 'HEX', 'PGF', 'ROSE', 'MINT', 'VETI'].map((code) =>
  vialRecord({ code, name: `material ${code}` }),
);

/** Strips in a solvent that stays wet are smelled at once: no one waits in a count of touches. */
const WET = ['ANIS', 'BERG', 'CLOV', 'DILL', 'ELDR', 'FIRB'];
const wetVials = WET.map((code) => vialRecord({ code, name: `material ${code}`, solvent: 'propylene-glycol' }));

/** Five of the vials, in a formula that they can be counted for. */
const FORMULA = newRecord('formula', {
  id: 'pink',
  name: 'Pink',
  root: 'pink',
  version: 1,
  notes: '',
  lines: vials
    .slice(0, 5)
    .map(({ contents }, i) => ({ material: contents[0]!.material, name: contents[0]!.name, share: i + 1 })),
});

/** In the order of a day. Without `go` the walk of this version is not written yet; every walk begins on the Bench. */
export const walks: readonly Walk[] = [
  {
    task: 'a bottle from the catalogue',
    first: 9,
    wanted: 4,
    before: (h) => h.tab('Shelf'),
    go: (_, page) => addFirstBottle(page),
  },
  { task: 'dilute', first: 16, wanted: 4, before: bottleRecord, go: dilute },
  { task: 'make exactly this', first: 9, wanted: 2 },
  { task: 'a set of three', first: 58, wanted: 8 },
  { task: '0.1 % through a bridge', first: 37, wanted: 8 },
  { task: 'calibrate with three weighings', first: 16, wanted: 7, go: calibrate },
  {
    task: 'layer five, two notes, one swap, verdict',
    first: 42,
    wanted: 22,
    before: (_, page) => shelve(page, [...vials, ...wetVials]),
    go: layer,
  },
  {
    task: 'count a formula of five vials',
    first: 27,
    wanted: 8,
    before: (_, page) => shelve(page, [FORMULA]),
    go: count,
  },
  { task: 'dose 250 mL', first: 16, wanted: 5, go: dose },
  { task: 'backup', first: 3, wanted: 1, go: backup },
];

/** Asked in the page: the driver hears of it a moment later. */
const hashOf = (page: Page) => page.evaluate(() => location.hash);

/** Answers step after step until the record is there: a choice with one of these words, text in fields of these names, else on. */
async function walkOn(h: Hand, page: Page, choices: readonly string[], texts: Answers = {}): Promise<void> {
  const typed = new Set<string>();
  for (let i = 0; i < 40; i++) {
    await page.locator('.run .say, .record').first().waitFor();
    if ((await page.locator('.record').count()) > 0) return;
    for (const [name, text] of Object.entries(texts))
      if (!typed.has(name) && (await page.locator(`input[name="${name}"]`).count()) > 0) {
        await page.locator(`input[name="${name}"]`).tap();
        await h.type(name, text);
        typed.add(name);
      }
    const labels = await page.locator('label.choice').allTextContents();
    const choice = choices.find((words) => labels.some((label) => label.includes(words)));
    const before = await hashOf(page);
    if (choice) await h.choose(choice);
    if ((await hashOf(page)) !== before) continue;
    const wish = /(?:Add|Count) (\d+)/.exec((await page.locator('.say').first().textContent())!)?.[1];
    if ((await page.locator('.pad').count()) > 0) await h.drops(Number(wish));
    const plus = page.locator('button.plus');
    if ((await plus.count()) > 0) await plus.tap();
    if ((await plus.count()) > 0) await page.locator('button.plus[aria-label*="1 so far"]').waitFor();
    await page.locator('.actions .main').tap();
    await page.waitForFunction(
      (hash) => location.hash !== hash || document.querySelector('.record, [role=alert]'),
      before,
    );
  }
  throw new Error('no end after 40 steps');
}

async function bottleRecord(h: Hand, page: Page): Promise<void> {
  await h.tab('Shelf');
  await page.locator('.entry', { hasText: 'cardamom oil' }).first().tap();
  await page.locator('.record').waitFor();
}

async function dilute(h: Hand, page: Page): Promise<void> {
  await h.tap('Dilute this');
  await h.slot('solvent', 'ethanol 96');
  await h.slot('food', 'Food grade');
  await walkOn(h, page, []);
}

async function calibrate(h: Hand, page: Page): Promise<void> {
  await h.task('Calibrate drops');
  await h.slot('readability', '0.001');
  for (const [i, mass] of ['0.309', '0.311', '0.308'].entries()) {
    await page.locator(`input[name="mass.${i + 1}"]`).tap();
    await h.type(`mass.${i + 1}`, mass);
  }
  await page.locator('.card-answer', { hasText: '±' }).waitFor();
  await page.getByRole('button', { name: 'Save' }).tap();
  await page.locator('.record').waitFor();
}

async function layer(h: Hand, page: Page): Promise<void> {
  await h.task('Layer strips');
  for (const code of WET.slice(0, 5)) await h.pick(code);
  await h.done();
  const dip = async () => {
    await page.waitForTimeout(500); // the pad takes no second touch before
    await page.locator('.dip-pad').tap();
  };
  const note = async (liking: number) => {
    await page.getByRole('button', { name: new RegExp(`^${liking}, (dis)?like`) }).tap();
    await page.locator('.main', { hasText: 'Save the note' }).tap();
    await page.locator('.main', { hasText: 'Give a verdict' }).waitFor();
  };
  for (let i = 0; i < 5; i++) await dip();
  await h.sees('Fan them');
  await note(6);
  await page.locator('.fan .strip', { hasText: WET[4]! }).locator('.state').first().tap();
  await page.locator('.sheet-row', { hasText: WET[5]! }).tap();
  await dip();
  await h.sees('Fan them');
  await note(7);
  await h.done();
  await h.choose('Keep');
  await h.finish();
}

async function count(h: Hand, page: Page): Promise<void> {
  await h.task('Count drops');
  await page.locator('.slot[data-name=formula]', { hasText: FORMULA.name }).waitFor();
  await page.locator('.actions .main', { hasText: 'Take' }).tap();
  for (let slips = 1; (await page.locator('.record').count()) === 0; slips = 0) {
    const wish = Number(/Count (\d+)/.exec((await page.locator('.say').first().textContent())!)![1]);
    await h.drops(wish + slips);
    const before = await hashOf(page);
    await page.locator('.actions .main').tap();
    await page.waitForFunction((hash) => location.hash !== hash || document.querySelector('.record'), before);
    if (slips) await h.choose('Leave it as it is');
  }
}

async function dose(h: Hand, page: Page): Promise<void> {
  await h.task('Dose a drink');
  await h.slot('base.name', 'tonic');
  await h.slot('aim', '20');
  await page.locator('.plus').tap();
  await page.locator('.plus[aria-label*=" 1 so far"]').waitFor();
  await page.waitForTimeout(450); // the buttons beside the drops sleep for a moment
  await h.finish();
}

async function backup(h: Hand, page: Page): Promise<void> {
  const saved = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Settings' }).tap();
  await page.getByText('Backup', { exact: false }).first().tap();
  await h.tap('Save a backup');
  await saved;
}
