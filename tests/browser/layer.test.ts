import { afterAll, beforeAll, expect, onTestFailed, test } from 'vitest';
import { vialRecord } from './benchRecords';
import { hand } from './hand';
import { openBench, type OpenBench } from './openBench';
import type { Phone } from './phone';

let bench: OpenBench;
let phone: Phone;
const CODES = ['CARD', 'HEX', 'PGF', 'ROSE', 'MINT', 'VETI'];

beforeAll(async () => {
  bench = await openBench({
    width: 360,
    height: 740,
    before: (page) => page.clock.install(),
    records: CODES.map((code) => vialRecord({ code, name: `material ${code}` })),
  });
  ({ phone } = bench);
});

afterAll(() => bench.close());

test('five are layered, with two notes, one swap and a verdict', async () => {
  const { page } = phone;
  const h = hand(page);
  onTestFailed(async () => void (await page.screenshot({ path: 'tests/output/layer.png' })));
  const dip = async (code: string) => {
    await page.locator('.dip-pad', { hasText: code }).waitFor();
    await page.clock.runFor(1000); // a hand dips no faster
    await page.waitForTimeout(450);
    await page.locator('.dip-pad').tap();
  };
  const dries = async () => {
    await page.locator('.status', { hasText: 'still wet' }).waitFor();
    await page.clock.runFor(121_000);
    await page.locator('.status', { hasText: /Dry: smell now/ }).waitFor();
  };
  const note = async (liking: number) => {
    await page.getByRole('button', { name: new RegExp(`^${liking}, like`) }).tap();
    await page.locator('.main', { hasText: 'Save the note' }).tap();
    await page.locator('.notes', { hasText: `liked ${liking}` }).waitFor();
  };

  await h.task('Layer strips');
  for (const code of CODES.slice(0, 5)) await h.pick(code);
  await page.locator('.main', { hasText: 'Dip 5' }).tap();
  for (const code of CODES.slice(0, 5)) await dip(code);
  await page.locator('.fan').waitFor();
  expect(await page.locator('.fan .state', { hasText: 'Wet' }).count()).toBe(5);
  await dries();
  await note(6);
  await page.locator('.fan .strip', { hasText: 'MINT' }).locator('.state').first().tap();
  await page.locator('.sheet-row', { hasText: 'VETI' }).tap();
  await dip('VETI');
  await dries();
  await note(8);
  await page.locator('.main', { hasText: 'Give a verdict' }).tap();
  await page.locator('.fold', { hasText: 'Liked 8 of 9' }).waitFor(); // not asked again
  await h.choose('Keep');
  await h.finish();

  await page.locator('.record .own', { hasText: 'liked 8 of 9' }).waitFor();
  await page.locator('.facts', { hasText: 'MINT 1 % (taken out' }).waitFor();
  await page.getByRole('button', { name: 'Take it to a formula' }).waitFor();
});

test('a note while strips are wet is offered, marked and counts for no pair', async () => {
  const { page } = phone;
  const h = hand(page);
  onTestFailed(async () => void (await page.screenshot({ path: 'tests/output/layer-wet.png' })));
  await page.goto(`${bench.url}#/`);
  await h.task('Layer strips');
  for (const code of ['CARD', 'HEX', 'PGF']) await h.pick(code);
  await page.locator('.main', { hasText: 'Dip 3' }).tap();
  for (const code of ['CARD', 'HEX', 'PGF']) {
    await page.locator('.dip-pad', { hasText: code }).waitFor();
    await page.waitForTimeout(450);
    await page.locator('.dip-pad').tap();
  }
  await page.locator('.fan .strip', { hasText: 'CARD' }).locator('.state').first().tap();
  await page.getByRole('button', { name: 'Smell it alone' }).tap();
  await page.locator('.note-card', { hasText: 'Wet: does not count as smelled' }).waitFor();
  await page.getByRole('button', { name: /^3, dislike/ }).tap();
  await page.locator('.main', { hasText: 'Save the note' }).tap();
  await page.locator('.notes', { hasText: 'liked 3' }).waitFor();
  expect(await page.locator('.notes').textContent()).toContain(', wet');
  expect(await page.locator('.pairs').textContent()).toContain('0 of 3 pairs compared');
});
