import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { newRecord } from '../../src/records/shelf';
import type { Vial } from '../../src/records/kind/vial';
import { material, pipette, vialOf } from '../tasks/count/countShelf';
import { hand } from './hand';
import { newProfile, openPhone, serve, type Phone } from './phone';
import { putRecords, storedOf } from './pageStore';

let site: Awaited<ReturnType<typeof serve>>;
let profile: ReturnType<typeof newProfile>;
let phone: Phone;
const complaints: string[] = [];

const parts = { gf: 55, rhu: 21, card: 6.5, hex: 1.7 };
const strengths: Record<string, number> = { gf1: 0.01, rhu1: 0.01, card1: 0.01, card01: 0.001, hex01: 0.001 };

/** Four materials, five vials, a weighed dropper and a formula. */
const shelf = [
  ...pipette,
  ...Object.keys(parts).map(material),
  ...Object.entries(strengths).map(([id, strength]) => vialOf(id, strength, { material: id.replace(/\d+/, '') })),
  newRecord('formula', {
    id: 'f',
    name: 'Orchard',
    root: 'f',
    version: 1,
    notes: '',
    lines: Object.entries(parts).map(([id, share]) => ({ material: id, name: `${id} oil`, share })),
  }),
];

async function cutPower(): Promise<void> {
  complaints.push(...phone.complaints); // what breaks off with the power does not count
  await phone.kill();
}

async function open(): Promise<ReturnType<typeof hand>> {
  phone = await openPhone(profile.dir, { home: site.url });
  await phone.page.goto(site.url);
  await phone.page.locator('.tasks .card').first().waitFor();
  return hand(phone.page);
}

/** The line at the pad: the code of its vial, and the drops asked for. */
async function line(): Promise<{ code: string; wish: number }> {
  const say = (await phone.page.locator('.say').textContent())!;
  const [, code, wish] = /Take (\w+) .*\. Count (\d+) drops/.exec(say)!;
  return { code: code!, wish: Number(wish) };
}

/** Counts all that is asked for, to the page of the trial; what fell is noted by code. */
async function countAll(fell: Record<string, number>): Promise<void> {
  const h = hand(phone.page);
  await phone.page.locator('.pad').waitFor();
  while ((await phone.page.locator('.record').count()) === 0) {
    const { code, wish } = await line();
    await h.drops(wish - (await h.count()));
    fell[code] = wish;
    const before = phone.page.url();
    await phone.page.locator('.actions .main').tap();
    await phone.page.waitForFunction((url) => location.href !== url, before);
    await phone.page.locator('.pad, .record').first().waitFor();
  }
}

beforeAll(async () => {
  site = await serve();
  profile = newProfile();
  await open();
  await putRecords(phone.page, shelf);
  await phone.page.reload();
  await phone.page.locator('.tasks .card').first().waitFor();
});

afterAll(async () => {
  await phone.context.close();
  await site.stop();
  profile.forget();
});

describe('a planned formula, drop by drop', () => {
  const counted: Record<string, number> = {};

  test('its page leads to the card: one plan is proposed, and another one is a touch away', async () => {
    await phone.page.goto(`${site.url}#/record/f`);
    const h = hand(phone.page);
    await h.tap('Count drops');
    await phone.page.locator('.slot[data-name=formula]', { hasText: 'Orchard' }).waitFor();
    await h.slot('purpose', 'To dose later');
    await phone.page.locator('svg.plan-curve[aria-label*="at most"]').waitFor();
    const proposed = await phone.page.locator('.slot[data-name=point] .slot-text').textContent();
    await phone.page.locator('.slot[data-name=point]').tap();
    await phone.page.locator('dialog[open] .sheet-row[aria-pressed=true]', { hasText: 'proposed' }).waitFor();
    await phone.page.locator('dialog[open] .sheet-row').last().tap();
    await phone.page.locator('.advice', { hasText: `${proposed} get within` }).waitFor();
    await h.slot('point', '37 drops');
    await expect.poll(() => phone.page.locator('.plan-line').count()).toBe(4);
    await expect.poll(() => phone.page.locator('.actions .main').textContent()).toMatch(/^Take \w+/);
    await h.done();
    await phone.page.locator('.pad').waitFor();
    const say = phone.page.locator('.say .amount').first();
    expect(await say.evaluate((one) => parseFloat(getComputedStyle(one).fontSize))).toBeGreaterThanOrEqual(28);
  });

  test('a drop too few is made up for by the remaining materials, and a killed phone remembers it', async () => {
    let h = hand(phone.page);
    const first = await line();
    await h.drops(first.wish - 1);
    counted[first.code] = first.wish - 1;
    await h.done();
    await h.sees('1 too few');
    await cutPower();

    h = await open();
    await h.tap('Resume');
    await h.sees('1 too few');
    await h.choose('Change the remaining materials');
    await phone.page.locator('.pad').waitFor();
    const second = await line();
    await h.drops(2);
    await cutPower();

    h = await open();
    await phone.page.locator('.paused', { hasText: `drop 2 of ${second.wish}` }).waitFor();
    await h.tap('Resume');
    expect(await line()).toEqual(second);
    expect(await h.count()).toBe(2);
    await h.drops(second.wish - 2);
    counted[second.code] = second.wish;
    await h.done();
  });

  test('a drop too many is told, and mended', async () => {
    const h = hand(phone.page);
    const third = await line();
    await h.drops(third.wish + 1);
    counted[third.code] = third.wish + 1;
    await h.done();
    await h.sees('1 too many');
    const ways = phone.page.locator('label.choice');
    expect(await ways.allTextContents()).toEqual(expect.arrayContaining([expect.stringContaining('% off')]));
    await ways.first().tap();
    await countAll(counted);
  });

  test('the trial is kept with what was really counted', async () => {
    const trial = (await storedOf<Vial>(phone.page, 'vial')).find(({ name }) => name === 'Orchard, trial 1')!;
    const total = Object.values(counted).reduce((sum, drops) => sum + drops, 0);
    for (const { material, strength } of trial.contents) {
      const lines = Object.entries(counted).filter(([code]) => code.toLowerCase().replace(/\d+/, '') === material);
      const active = lines.reduce((sum, [code, drops]) => sum + drops * strengths[code.toLowerCase()]!, 0);
      expect(strength.value).toBeCloseTo(active / total, 10); // every drop weighs 15 mg here
    }
    expect(trial.contents).toHaveLength(4);
    const kept = trial.uses.map(({ code, drops }) => [code!, drops!]);
    expect(Object.fromEntries(kept)).toEqual(counted);
    expect(trial.done!.slips!.map(({ planned, counted: had }) => had - planned)).toEqual([-1, 1]);
    complaints.push(...phone.complaints);
    expect(complaints).toEqual([]);
  });

  test('its page shows the drops by vial, and how it was made tells each turn with the drops of then', async () => {
    const rows = await phone.page.locator('.record .in-it li').allTextContents();
    for (const [code, drops] of Object.entries(counted))
      expect(rows.join()).toMatch(new RegExp(`${drops} drops${code} [\\d.]+ % w/w`));
    await phone.page.locator('summary', { hasText: 'How it was made' }).tap();
    await phone.page.locator('.story li').first().waitFor();
    const story = await phone.page.locator('.story li').allInnerTexts();
    const turns = story
      .filter((words) => words.startsWith('Take'))
      .map((words) => /Count (\d+) drop[^]*Drops: (\d+)/.exec(words)!);
    expect(turns.filter(([, wish, had]) => wish !== had)).toHaveLength(2); // the two slips, and no turn beside them
  });

  test('made again, it is two taps to the first drop, and the very same drops', async () => {
    const h = hand(phone.page);
    await h.tap('Make exactly this');
    await h.sees('Nothing is different');
    await phone.page.locator('.main', { hasText: 'Begin' }).tap();
    await phone.page.locator('.pad').waitFor();
    const wanted: Record<string, number> = {};
    await countAll(wanted);
    expect(wanted).toEqual(counted);
    const [first, second] = ['Orchard, trial 1', 'Orchard, trial 2'].map(async (name) =>
      (await storedOf<Vial>(phone.page, 'vial'))
        .find((one) => one.name === name)!
        .uses.map(({ id, drops }) => [id, drops]),
    );
    expect(await second).toEqual(await first);
    expect(phone.complaints).toEqual([]);
  });
});
