import type { Page } from 'playwright-core';
import { newRecord } from '../../src/records/shelf';
import { shelve, vialRecord } from './benchRecords';
import { nameBottle } from './firstBottle';
import type { hand } from './hand';

type Hand = ReturnType<typeof hand>;
type Walk = (h: Hand, page: Page) => Promise<unknown>;

/** A task as somebody does it who has done it before. */
export interface TouchWalk {
  readonly task: string;
  /** Taps of the first version, without drops; none where it was not counted then. */
  readonly first?: number;
  /** The most taps, without drops, and the most keys that it may take. */
  readonly most: { readonly taps: number; readonly keys: number };
  /** The words after which README.md states what it takes. */
  readonly stated?: string;
  /** What is there before it begins, the same done once among it: not counted. */
  before?: Walk;
  /** Where it begins, other than on the Bench. */
  from?: Walk;
  readonly go: Walk;
}

const vials = ['CARD', 'HEX', 'PGF', 'ROSE', 'MINT'].map((code) => vialRecord({ code, name: `material ${code}` }));

/** Strips in a solvent that stays wet are smelled at once: no one waits in a count of touches. */
const WET = ['ANIS', 'BERG', 'CEDR', 'DILL', 'ELDR', 'FIRB'];
const wetVials = WET.map((code) => vialRecord({ code, name: `material ${code}`, solvent: 'propylene-glycol' }));

/** Two bottles of what there is no vial of yet. */
const NEVER_DILUTED = (['fennel', 'tarragon'] as const).flatMap((name) => [
  newRecord('material', { id: name, name: `${name} oil`, code: name.slice(0, 4).toUpperCase(), sort: 'natural', form: 'liquid', cautions: [] }), // prettier-ignore
  newRecord('bottle', {
    material: name,
    supplier: 'Pebblewick Oils (made up)',
    lot: `${name}-1`,
    grade: 'fit for drinks',
    received: '2026-05-01',
    useBy: '2027-05-01',
  }),
]);

/** Five of the vials, in a formula that they can be counted for. */
const FORMULA = newRecord('formula', {
  id: 'pink',
  name: 'Pink',
  root: 'pink',
  version: 1,
  notes: '',
  lines: vials.map(({ contents }, i) => ({
    material: contents[0]!.material,
    name: contents[0]!.name,
    share: i + 1,
  })),
});

const main = (page: Page) => page.locator('.actions .main');
const recorded = (page: Page) => page.locator('.record').waitFor();

/** In the order of a day, each on what the ones before have left; all but the first begin on the Bench where nothing else is said. */
export const touchWalks: readonly TouchWalk[] = [
  {
    task: 'empty profile to the first labelled vial',
    most: { taps: 12, keys: 8 },
    stated: 'to the printed label',
    go: firstLabelledVial,
  },
  {
    task: 'a bottle from the catalogue',
    first: 9,
    most: { taps: 4, keys: 8 },
    from: (h) => h.tab('Shelf'),
    go: (h, page) => bottle(h, page, 'clov', 'Save and next'),
  },
  {
    task: 'the next bottle, without leaving',
    most: { taps: 4, keys: 8 },
    from: async (h, page) => {
      await h.tab('Shelf');
      await bottle(h, page, 'pepp', 'Save and next');
    },
    go: (h, page) => nextBottle(h, page, 'spea', 'Save'),
  },
  { task: 'dilute', first: 16, most: { taps: 4, keys: 0 }, before: solventOnShelf, go: dilute },
  { task: 'make exactly this', first: 9, most: { taps: 2, keys: 0 }, from: vialPage, go: exactly },
  { task: 'dose 250 mL to a target', first: 16, most: { taps: 5, keys: 0 }, before: dose, go: dose },
  { task: 'a set of three', first: 58, most: { taps: 8, keys: 0 }, go: rack },
  { task: '0.1 % through a bridge', first: 37, most: { taps: 8, keys: 0 }, before: bridgeOnce, go: bridge },
  {
    task: 'calibrate with three weighings',
    first: 16,
    most: { taps: 7, keys: 15 }, // the digits
    before: calibrate,
    go: calibrate,
  },
  {
    task: 'layer five, two notes, one swap, verdict',
    first: 42,
    most: { taps: 22, keys: 0 },
    before: (_, page) => shelve(page, [...vials, ...wetVials]),
    go: layer,
  },
  {
    task: 'count a formula of five vials, with a rescue',
    first: 27,
    most: { taps: vials.length + 3, keys: 0 },
    before: (_, page) => shelve(page, [FORMULA]),
    go: count,
  },
  { task: 'backup', first: 3, most: { taps: 1, keys: 0 }, go: backup },
];

async function firstLabelledVial(h: Hand, page: Page): Promise<void> {
  await bottle(h, page, 'card', 'Save');
  await h.tap('Dilute it');
  await h.slot('solvent', 'ethanol 96');
  await h.slot('food', 'food grade');
  await main(page).tap();
  await allDrops(h, page);
  await h.finish();
  await h.tap('Print label');
  await page.evaluate(() => addEventListener('beforeprint', () => (document.title = 'printing')));
  await h.tap('Print 1 label');
  await page.waitForFunction(() => document.title === 'printing');
}

async function bottle(h: Hand, page: Page, letters: string, save: string): Promise<void> {
  await h.tap('Add a bottle');
  await nextBottle(h, page, letters, save);
}

async function nextBottle(h: Hand, page: Page, letters: string, save: string): Promise<void> {
  await nameBottle(page, letters, letters);
  await h.slot('new.grade', 'food grade');
  await page.getByRole('button', { name: save, exact: true }).tap();
  await (save === 'Save' ? recorded(page) : page.locator('[name="new.name"]:focus').waitFor());
}

/** Lets all drops that the pad asks for fall; how many those are. */
async function allDrops(h: Hand, page: Page, more = 0): Promise<void> {
  await page.locator('.pad').waitFor();
  const asked = /(?:Add|Count) (\d+)/.exec((await page.locator('.say').first().textContent())!)!;
  await h.drops(Number(asked[1]) - (await h.count()) + more);
}

/** Its grade is said once, on its bottle. */
async function solventOnShelf(h: Hand): Promise<void> {
  await h.tab('Shelf');
  await h.tap('Add solvents and supplies');
  await h.tap('ethanol 96');
  await h.slot('grade.ethanol-96', 'food grade');
  await h.finish();
}

async function dilute(h: Hand, page: Page): Promise<void> {
  await h.task('Dilute');
  await page.locator('.card-answer .big').waitFor();
  await main(page).tap();
  await page.locator('.pad').waitFor();
  await allDrops(h, page);
  await h.finish();
}

async function vialPage(h: Hand, page: Page): Promise<void> {
  await h.tab('Book');
  await page.locator('.page-of-book', { hasText: 'SPEA' }).first().getByRole('button', { name: /^Open/ }).tap();
  await recorded(page);
}

async function exactly(h: Hand, page: Page): Promise<void> {
  await h.tap('Make exactly this');
  await main(page).tap();
  await page.locator('.pad').waitFor();
}

async function rack(h: Hand, page: Page): Promise<void> {
  await h.task('Dilute');
  await h.tap('More vials');
  await page.locator('.pick-rows').waitFor();
  for (const code of ['CARD', 'CLBU']) await h.pick(code);
  await page.locator('.main', { hasText: 'Make 3 vials' }).tap();
  for (let vial = 1; vial <= 3; vial++) await nextOfRack(h, page);
  await page.locator('.labels').waitFor();
}

/** Fills the vial of the rack that is in hand, and goes on to the next one or to the labels. */
async function nextOfRack(h: Hand, page: Page): Promise<void> {
  await page.locator('.pad').waitFor();
  await allDrops(h, page);
  await h.done();
}

async function bridgeOnce(h: Hand, page: Page): Promise<void> {
  await shelve(page, NEVER_DILUTED);
  await h.task('Dilute');
  await h.slot('bottle', 'fennel oil');
  await h.slot('strength', '0.1');
  await bothOfBridge(h, page);
}

async function bridge(h: Hand, page: Page): Promise<void> {
  await h.task('Dilute');
  await h.slot('bottle', 'tarragon oil');
  await page.locator('.slot[data-name=strength]', { hasText: '0.1 %' }).waitFor(); // as last time
  await bothOfBridge(h, page);
}

async function bothOfBridge(h: Hand, page: Page): Promise<void> {
  await page.locator('.actions .main', { hasText: /^Make [\d.]+ % / }).tap();
  for (let vial = 1; vial <= 2; vial++) await nextOfRack(h, page);
  await page.locator('.labels').waitFor();
}

async function calibrate(h: Hand, page: Page): Promise<void> {
  await h.task('Calibrate drops');
  await page.locator('input[name="mass.1"]').waitFor();
  for (const [i, mass] of ['0.309', '0.311', '0.308'].entries()) {
    await page.locator(`input[name="mass.${i + 1}"]`).tap();
    await page.keyboard.type(mass);
  }
  await page.locator('.card-answer', { hasText: '±' }).waitFor();
  await h.tap('Save');
  await recorded(page);
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
  await page.locator('.pad').waitFor();
  for (let slips = 1; (await page.locator('.record').count()) === 0; slips = 0) {
    await allDrops(h, page, slips);
    const before = await page.evaluate(() => location.hash);
    await main(page).tap();
    await page.waitForFunction((hash) => location.hash !== hash || document.querySelector('.record'), before);
    if (slips) await h.choose('Leave it as it is');
    await page.locator('.pad, .record').first().waitFor();
  }
}

async function dose(h: Hand, page: Page): Promise<void> {
  await h.task('Dose a drink');
  await page.locator('.run .sentence').waitFor();
  if (await page.locator('.slot[data-name="base.name"].empty').count()) await h.slot('base.name', 'tonic');
  await page.locator('.slot[data-name=aim]').tap();
  await page.locator('dialog[open] .usual button', { hasText: '10 mg/kg' }).tap();
  await page.locator('.card-answer', { hasText: 'to go' }).waitFor();
  const toGo = Number(/(\d+) to go/.exec((await page.locator('.card-answer').textContent())!)![1]);
  for (let fallen = 1; fallen <= toGo; fallen++) {
    await page.locator('.plus').tap();
    await page.locator(`.plus[aria-label*=" ${fallen} so far"]`).waitFor();
    await page.waitForTimeout(60); // a finger is no faster
  }
  await page.waitForTimeout(450); // the buttons beside the drops sleep for a moment
  await h.finish();
}

async function backup(h: Hand, page: Page): Promise<void> {
  const saved = page.waitForEvent('download');
  await h.tap('Back up');
  await saved;
  await page.locator('.keeping-line', { hasText: /^Done: \d+ records/ }).waitFor();
}
