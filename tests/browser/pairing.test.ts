import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { squareCodeOf } from '../../src/ui/label/squareCode';
import type { AnyRecord } from '../../src/records/kind/kinds';
import { newRecord } from '../../src/records/shelf';
import { shelve, vialRecord } from './benchRecords';
import { serve } from './phone';
import { twoPhones, type Held, type TwoPhones } from './twoPhones';

/** Two browser processes on the built page, with its own policy, in one network. */
let site: { url: string; stop: () => Promise<void> };
let two: TwoPhones;

beforeAll(async () => {
  site = await serve();
});
afterAll(() => site.stop());

const vials = (code: string, many: number) =>
  Array.from({ length: many }, (_, i) => vialRecord({ code: `${code}${i}`, name: `${code} oil ${i}` }));

async function name(held: Held, words: string): Promise<void> {
  await held.devices();
  await held.page.getByLabel('This device is called').fill(words);
  await held.page.waitForTimeout(500); // it is stored with every letter
}

/** One shows its code, the other scans it and shows its own, the first scans that. By the cameras. */
async function pairByCameras(first: Held, second: Held): Promise<void> {
  await first.tap('Show a code');
  second.sees(await first.shownCode());
  await second.tap('Scan the other’s code');
  first.sees(await second.shownCode());
  await first.tap('Scan its answer');
}

/** The same with the codes as text. */
async function pairByTexts(first: Held, second: Held): Promise<void> {
  await first.tap('Show a code');
  const code = await first.shownCode();
  await second.tap('Scan the other’s code');
  await second.page.getByLabel('Paste its code here').fill(code);
  const answer = await second.shownCode();
  await first.tap('Scan its answer');
  await first.page.getByLabel('Paste its code here').fill(answer);
}

const same = (held: Held) => held.page.getByText('hold the same now').waitFor();

describe('two devices that pair by their cameras', () => {
  beforeAll(async () => {
    two = await twoPhones(site.url, { seeCodes: true });
  });
  afterAll(async () => expect(await two.close()).toEqual([]));

  test('hold the same afterwards, both ways, and say what came and went', async () => {
    const [phone, tablet] = two.phones;
    await shelve(phone.page, vials('PHO', 3));
    await shelve(tablet.page, vials('TAB', 2));
    await name(phone, 'phone at the bench');
    await name(tablet, 'tablet by the printer');
    await pairByCameras(phone, tablet);
    await Promise.all([same(phone), same(tablet)]);
    const [atPhone, atTablet] = [await phone.holds(), await tablet.holds()];
    expect(atPhone.records).toHaveLength(7); // with the names of both
    expect(atPhone).toEqual(atTablet);
    expect(await phone.page.getByText('This device and “tablet by the printer” hold the same now.').count()).toBe(1);
    await phone.page.getByText('Came: 3').tap();
    await phone.page.getByText('TAB oil 1').first().waitFor();
    await phone.page.getByText('Went: 4').waitFor();
    await tablet.page.getByText('Came: 4').waitFor();
  });

  test('have nothing to send when they meet again, and the code is one that a poor camera reads', async () => {
    const [phone, tablet] = two.phones;
    await Promise.all([phone.tap('Done'), tablet.tap('Done')]);
    await tablet.tap('Show a code');
    expect(squareCodeOf(await tablet.shownCode()).side).toBeLessThanOrEqual(49); // version 8; a label's code has 21
    await tablet.tap('Stop');
    await pairByCameras(tablet, phone);
    await Promise.all([same(phone), same(tablet)]);
    for (const held of two.phones) await held.page.getByText('Came: nothing.').waitFor();
    for (const held of two.phones) await held.page.getByText('Went: nothing.').waitFor();
    await Promise.all([phone.tap('Done'), tablet.tap('Done')]);
  });
});

describe('two devices that pair by their codes as texts', () => {
  beforeAll(async () => {
    two = await twoPhones(site.url);
  });
  afterAll(async () => {
    const said = await two.close();
    expect(said.filter((complaint) => !complaint.includes('Transition was aborted'))).toEqual([]);
  });

  const comes = async (held: Held) => {
    const text = await held.page.locator('dt', { hasText: 'Comes' }).locator('+ dd').innerText();
    return text.split(' of ').map((count) => Number(count.replace(/\D/g, ''))) as [number, number];
  };

  test('of which one is killed half way come out equal: what came is not sent again', async () => {
    const [phone, tablet] = two.phones;
    await shelve(phone.page, vials('PHO', 40));
    await shelve(tablet.page, vials('TAB', MANY));
    await Promise.all([phone.devices(), tablet.devices()]);
    await pairByTexts(phone, tablet);
    await phone.page.waitForFunction(() => /Comes\s*[1-9]/.test(document.querySelector('dl')?.textContent ?? ''));
    await tablet.kill();
    await phone.page.getByText('The connection broke.').waitFor();
    const came = (await phone.holds()).records.length - 41; // with the name of the phone
    expect(came).toBeGreaterThan(0);
    expect(came).toBeLessThan(MANY);
    await phone.tap('Back to the codes');
    await tablet.open();
    await tablet.devices();
    await pairByTexts(phone, tablet);
    await phone.page.getByText(/^Connected/).waitFor();
    await phone.page.waitForFunction(() => / of [1-9]/.test(document.querySelector('dl dd')?.textContent ?? ''));
    expect((await comes(phone))[1]).toBeLessThanOrEqual(MANY + 1 - came);
    await Promise.all([same(phone), same(tablet)]);
    const [atPhone, atTablet] = [await phone.holds(), await tablet.holds()];
    expect(atPhone.records).toHaveLength(MANY + 42);
    expect(atPhone).toEqual(atTablet);
    console.log(`killed after ${came} of ${MANY}; the rest came after pairing again`);
  });
});

const MANY = 2500; // some 3 MB

describe('two devices with all sorts of work on them', () => {
  beforeAll(async () => {
    two = await twoPhones(site.url);
  });
  afterAll(async () => expect(await two.close()).toEqual([]));

  /** A choice in the settings; waits until it is stored. */
  async function choose(held: Held, words: string): Promise<void> {
    await held.page.goto(`${site.url}#/settings`);
    await held.page.getByText(words, { exact: true }).tap();
    await held.page.locator('.chosen', { hasText: words }).waitFor();
  }

  test('have all of it on both: runs with their steps, photos, and what each changed of one record', async () => {
    const [phone, tablet] = two.phones;
    await phone.page.goto(`${site.url}#/shelf`);
    await phone.tap('Look around a made-up workshop');
    await phone.page.locator('.demo-notice').waitFor();
    await shelve(tablet.page, withPhotos());
    await choose(phone, 'Paper (light)');
    await meet(phone, tablet);
    const [atPhone, atTablet] = [await phone.holds(), await tablet.holds()];
    expect(atPhone.events.length).toBeGreaterThan(100);
    expect(atPhone.records.filter((record) => (record as { kind: string }).kind === 'picture')).toHaveLength(3);
    expect(atPhone).toEqual(atTablet);

    await choose(phone, 'Left');
    await choose(tablet, 'mg/kg');
    await meet(tablet, phone);
    for (const held of two.phones) {
      const { records } = await held.holds();
      const settings = records.find((record) => (record as { id: string }).id === 'settings');
      expect(settings).toMatchObject({ hand: 'left', basis: 'mg/kg' });
    }
    expect(await phone.holds()).toEqual(await tablet.holds());
  });

  async function meet(first: Held, second: Held): Promise<void> {
    for (const held of [first, second]) await held.devices();
    await pairByTexts(first, second);
    await Promise.all([same(first), same(second)]);
    for (const held of [first, second]) await held.tap('Done');
  }
});

/** A vial with three photos, of 150 kB each. */
function withPhotos(): AnyRecord[] {
  const [vial] = vials('PIC', 1);
  const pictures = Array.from({ length: 3 }, (_, i) =>
    newRecord('picture', { type: 'image/jpeg', data: Buffer.alloc(150_000, `photo ${i} `).toString('base64') }),
  );
  const photos = pictures.map(({ id }) =>
    newRecord('photo', { of: vial!.id, taken: '2026-05-04T10:00:00.000Z', width: 9, height: 9, bytes: 9, picture: id }),
  );
  return [vial!, ...pictures, ...photos];
}
