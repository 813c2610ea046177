import { readFileSync } from 'node:fs';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { digitFaults, everythingRead, finerThanScale } from './audit/digitRules';
import { everyRecord, pagesOf } from './audit/pages';
import { paths } from './audit/paths';
import { settle } from './audit/settle';
import { stroll } from './audit/stroll';
import { newProfile, openPhone, serve, type Phone } from './phone';

let site: Awaited<ReturnType<typeof serve>>;
let profile: ReturnType<typeof newProfile>;
let phone: Phone;
const faults = new Map<string, string>();
let read = 0;
let weighings = 0;

const SCALES = { fine: '0.001', coarse: '1', readability: '0.01' } as const; // what the walks type
const WEIGHS = /^(Weigh|Add|Tare|Dilute it first|Put the vial on the scale|Into the)/;
const COARSE = /^Into the .* of (sugar|water)/;

function hold(here: string, texts: readonly string[]): void {
  read += texts.length;
  for (const text of texts)
    for (const fault of digitFaults(text))
      if (!faults.has(`${fault} | ${text}`)) faults.set(`${fault} | ${text}`, here);
}

async function look(here: string): Promise<void> {
  hold(here, await phone.page.evaluate(everythingRead));
  const say = (await phone.page.locator('.run .say').allTextContents()).join(' ');
  const steps = COARSE.test(say)
    ? [Number(SCALES.coarse)]
    : WEIGHS.test(say)
      ? [Number(here.startsWith('Make a batch') ? SCALES.fine : SCALES.readability)]
      : null;
  if (!steps) return;
  weighings++;
  for (const fault of finerThanScale(say, steps)) faults.set(`${fault} | ${say}`, here);
}

/** What was found since it was last asked, each with the first screen that it is on. */
function news(): string[] {
  const found = [...faults].map(([fault, here]) => `${here}: ${fault}`);
  faults.clear();
  return found;
}

async function goTo(hash: string): Promise<void> {
  await phone.page.evaluate((hash) => (location.hash = hash), hash);
  await settle(phone.page);
}

beforeAll(async () => {
  site = await serve();
  profile = newProfile();
  phone = await openPhone(profile.dir, { home: site.url, width: 360, height: 740 });
  await phone.page.goto(`${site.url}#/shelf`);
  await phone.page.getByRole('button', { name: 'Look around a made-up workshop' }).tap();
  await phone.page.locator('.demo-notice').waitFor();
});

afterAll(async () => {
  await phone.context.close();
  await site.stop();
  profile.forget();
});

const WALKED = ['dilute', 'calibrate', 'count', 'dose', 'batch', 'lookup', 'formula', 'bottle'];
test.each(paths.filter(({ task, name }) => WALKED.includes(task) || /Threshold|Triangle/.test(name)))(
  'every number on the way through $name',
  async (path) => {
    await goTo(`#/new/${path.task}`);
    await stroll(
      phone.page,
      { ...path, types: { ...SCALES, ...path.types } },
      { inspect: look, note: () => undefined },
    );
    expect(news()).toEqual([]);
  },
);

test('every number on the page, the paper, the sheet of every record, and of every page', async () => {
  for (const [name, hash, prepare] of await pagesOf(phone.page)) {
    await goTo(hash);
    if (prepare) await prepare(phone.page);
    await look(name);
  }
  const records = (await everyRecord(phone.page)).filter(({ kind }) => kind !== 'settings');
  for (const { id, kind } of records)
    for (const sub of ['', 'how/0', 'paper']) {
      await goTo(`#/record/${id}/${sub}`);
      await look(`record ${kind} ${sub}`);
    }
  expect(news()).toEqual([]);
});

test('every number on every label', async () => {
  const labelled = (await everyRecord(phone.page)).filter(({ kind }) => ['vial', 'bottle', 'batch'].includes(kind));
  for (const { id } of labelled) {
    await goTo(`#/labels/${id}`);
    await phone.page.locator('svg.label').first().waitFor();
    await look('label');
  }
  expect(news()).toEqual([]);
});

test('every number of the tables for a spreadsheet', async () => {
  const records = (await everyRecord(phone.page)).filter(({ kind }) =>
    ['vial', 'batch', 'tasting', 'test'].includes(kind),
  );
  for (const { id, kind } of records) {
    await goTo('#/settings'); // so that the button is that of the next record
    await phone.page.getByRole('button', { name: 'CSV' }).waitFor({ state: 'detached' });
    await goTo(`#/record/${id}/paper`);
    const [file] = await Promise.all([
      phone.page.waitForEvent('download'),
      phone.page.getByRole('button', { name: 'CSV' }).tap(),
    ]);
    const lines = readFileSync((await file.path())!, 'utf8').split('\r\n');
    hold(
      `table of a ${kind}`,
      lines.map((line) => line.replace(/^([^,]*),(-?[\d.]+),([\d.]+),/, '$1: $2 ± $3 ')),
    );
  }
  expect(news()).toEqual([]);
});

test('there was something to read', () => {
  expect(read).toBeGreaterThan(5000);
  expect(weighings).toBeGreaterThanOrEqual(5);
  expect(phone.complaints).toEqual([]);
});
