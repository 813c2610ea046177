import type { Page } from 'playwright-core';
import { hand } from '../hand';
import type { Path } from './stroll';

/** Taps the first thing that has these words on it. */
function press(selector: string, words: RegExp = /./): (page: Page) => Promise<void> {
  return (page) => page.locator(selector, { hasText: words }).first().tap();
}

/** Does so where no sheet is open yet. */
function unlessOpen(act: (page: Page) => Promise<void>): (page: Page) => Promise<void> {
  return async (page) => void ((await page.locator('dialog[open]').count()) || (await act(page)));
}

/** Takes the first vial for another strip; what comes after it is to dip it. */
async function takeStrip(page: Page): Promise<void> {
  await press('dialog[open] .sheet-row')(page);
  await page.locator('.dip-pad').waitFor();
}

const main = press('.run .main');
const nosing = (method: string, types: Record<string, string> = {}): Path & { task: string } => ({
  task: 'blind',
  name: `Blind test: ${method}`,
  types: {
    tries: '3',
    attribute: 'sour',
    'sample.0': 'first lot',
    'sample.1': 'second lot',
    'sample.2': 'third',
    ...types,
  },
  slots: { test: new RegExp(`^${method}|Test ${method}`) },
  steps: 60,
});

/** The runs that are walked. The name before the colon is that of the task; a step met before is not looked at again. */
export const paths: readonly (Path & { readonly task: string })[] = [
  { task: 'dilute', name: 'Dilute', prefer: [/pink grapefruit/] },
  {
    task: 'dilute',
    name: 'Dilute: weighed',
    slots: { measure: /On a scale/, dropper: /On a scale/ },
    types: { 'solvent.g': '4', 'material.g': '0.3' },
  },
  { task: 'dilute', name: 'Dilute: a rack', at: [[/ to .* in a .* vial/, press('.actions .second')]] },
  { task: 'calibrate', name: 'Calibrate drops', prefer: [/ethanol/], types: { 'mass.1': '0.309', 'mass.2': '0.311' } },
  {
    task: 'layer',
    name: 'Layer strips',
    prefer: [/CARD 1 %|NOOT|RHU 5 %|HEX3 1 %/],
    at: [
      [/^Fan them/, press('.ways .second', /Add/)],
      [/^Fan/, takeStrip],
      [/^Fan t/, press('.ways .second', /Pairs/)],
      [/^(Next:|What to layer)/, main],
      [/^Fan th/, press('.fan .state')],
      [/^Fan the/, press('dialog[open] .second', /alone/)],
      [/^Fan them,/, press('.note-words .more')],
    ],
    steps: 40,
  },
  { task: 'count', name: 'Count drops', steps: 60 },
  {
    task: 'count',
    name: 'Count drops: by hand',
    slots: { formula: /Vials and drops|vials/ },
    at: [
      [/^Count vials into/, unlessOpen(press('.run button:is(.main, .second)', /Pick vials/))], // it is the main button, too
      [/^Count vials/, press('dialog[open] .choice')],
      [/^Count v/, press('dialog[open] .main')],
    ],
  },
  { task: 'dose', name: 'Dose a drink', steps: 40 },
  {
    task: 'dose',
    name: 'Dose a drink: a series',
    prefer: [/RHU 5 %/],
    types: { lowest: '10', glasses: '2' },
    at: [
      [/ into .*, target /, press('.actions .second', /Series/)],
      [/ into 2 glasses /, main],
    ],
    steps: 60,
  },
  { task: 'batch', name: 'Make a batch', types: { litres: '20', dose: '40', fine: '0.001' }, steps: 60 },
  nosing('Triangle'),
  nosing('Ranking'),
  nosing('Threshold', { tries: '1' }),
  nosing('Duo-trio'),
  { task: 'lookup', name: 'Look up ppm', steps: 1, ends: false },
  { task: 'bottle', name: 'Add a bottle', types: { 'new.received': '2026-11-01' } },
  {
    task: 'supply',
    name: 'Add supplies',
    at: [[/^Came from/, press('.good-name', /ethanol 96/)]],
  },
  {
    task: 'certificate',
    name: 'Certificate',
    begin: async (page) => {
      await page.evaluate(() => (location.hash = '#/shelf/bottle'));
      await press('.entry')(page);
      await hand(page).more('certificate');
    },
  },
  {
    task: 'proportions',
    name: 'Find the proportions',
    at: [
      ...Array.from({ length: 6 }, () => [/^\d+\s/, press('.numbers .point', /5/)] as const), // five blends, one of them twice
      [/^Best so far/, press('.offers .second', /Stop and save/)],
    ],
    steps: 30,
  },
  { task: 'formula', name: 'Write a formula', prefer: [/aperitif|Pink/] },
];
