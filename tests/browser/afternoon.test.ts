import { afterAll, beforeAll, beforeEach, expect, onTestFailed, test } from 'vitest';
import { digitFaults, everythingRead } from './audit/digitRules';
import { shelve, vialRecord } from './benchRecords';
import { hand } from './hand';
import { newProfile, openPhone, serve, type Phone } from './phone';

let site: Awaited<ReturnType<typeof serve>>;
let profile: ReturnType<typeof newProfile>;
let phone: Phone;
let h: ReturnType<typeof hand>;
const complaints: string[] = [];
let read = 0;

const CODES = ['CARD', 'HEX3', 'PGF', 'ROSE', 'MINT', 'VETI', 'ANIS'];
const vials = CODES.map((code, i) =>
  vialRecord({ code, name: `made-up material ${i + 1}`, ...(code === 'PGF' ? { solvent: 'propylene-glycol' } : {}) }),
);

/** A new browser process on the same profile, without a network. */
async function open(): Promise<void> {
  phone = await openPhone(profile.dir, { home: site.url });
  await phone.context.setOffline(true);
  await phone.page.goto(site.url);
  await phone.page.locator('.tasks .card').first().waitFor();
  h = hand(phone.page);
}

async function cutPower(): Promise<void> {
  complaints.push(...phone.complaints); // what breaks off with the power does not count
  await phone.kill();
}

async function resume(): Promise<void> {
  await phone.page.getByRole('button', { name: /^Resume/ }).tap();
  await phone.page.locator('.run .say').waitFor();
}

beforeAll(async () => {
  site = await serve();
  profile = newProfile();
  phone = await openPhone(profile.dir, { home: site.url });
  await phone.page.goto(site.url);
  await phone.page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
  await phone.page.locator('.tasks .card').first().waitFor();
  await shelve(phone.page, vials);
  await phone.page.locator('.tasks .card').first().waitFor();
  await phone.context.close();
  await open();
});

beforeEach((context) => {
  onTestFailed(async () => {
    await phone.page.screenshot({ path: `tests/output/${context.task.name.slice(0, 40)}.png` });
  });
});

afterAll(async () => {
  complaints.push(...phone.complaints);
  await phone.context.close();
  await site.stop();
  profile.forget();
  expect(complaints).toEqual([]);
});

/** Every number on the screen is held to its ± and to its scale. */
async function readNumbers(): Promise<void> {
  const texts = await phone.page.evaluate(everythingRead);
  read += texts.length;
  expect(texts.flatMap(digitFaults)).toEqual([]);
}

async function dipNext(code: string): Promise<void> {
  await h.sees(`Dip ${code}`);
  await phone.page.waitForTimeout(450); // a hand dips no faster, and the pad takes no second touch before
  await readNumbers();
  await phone.page.locator('.dip-pad').tap();
}

/** Opens the sheet of a strip of the fan, by a touch on the picture. */
async function strip(code: string): Promise<void> {
  await phone.page.locator('.fan .strip', { hasText: code }).locator('.state').first().tap();
  await phone.page.locator('dialog[open]', { hasText: code }).waitFor();
}

/** Takes the proposal up, writes one word and a liking. */
async function noteOnProposal(liking: number, interrupted: boolean): Promise<void> {
  await h.tap('Pairs');
  await h.sees('Next: ');
  await h.done();
  await phone.page.locator('.fan').waitFor();
  await expect.poll(() => phone.page.locator('.fan .strip:not(.aside)').count()).toBe(2);
  await phone.page.locator('.note-words .more').tap();
  await phone.page.locator('.tab', { hasText: 'citrus' }).tap();
  await phone.page.getByRole('button', { name: 'zesty', exact: true }).tap();
  await phone.page.waitForFunction(
    () => document.querySelector<HTMLInputElement>('input[name$=".words"]')?.value === 'zesty',
  );
  if (interrupted) {
    const said = await phone.page.locator('.say').textContent();
    await cutPower();
    await open();
    await resume();
    expect(await phone.page.locator('.say').textContent()).toBe(said);
    expect(await phone.page.locator('input[name$=".words"]').inputValue()).toBe('zesty');
  }
  await phone.page.getByRole('button', { name: new RegExp(`^${liking}, (dis)?like`) }).tap();
  await phone.page.locator('.scale .amount', { hasText: String(liking) }).waitFor();
  await h.done();
  await phone.page.locator('.fan').waitFor();
  await readNumbers();
}

test('six strips, ten pairs proposed and noted, a swap, a verdict and a formula, killed in the middle', async () => {
  await h.task('Layer strips');
  for (const code of CODES.slice(0, 6)) await h.pick(code);
  await h.sees('6 picked');
  await h.done();
  for (const code of CODES.slice(0, 6)) await dipNext(code);
  await phone.page.locator('.fan').waitFor();
  expect(await phone.page.locator('.fan').getAttribute('aria-label')).toContain('PGF 1 % Stays wet');
  for (const code of CODES.slice(0, 6).filter((one) => one !== 'PGF')) {
    await strip(code);
    await h.tap('It is dry now');
    await phone.page.locator('dialog[open]').waitFor({ state: 'detached' });
  }
  await h.sees('Fan them');
  for (let i = 0; i < 10; i++) await noteOnProposal(i === 6 ? 9 : 4, i === 4);
  await phone.page.locator('.pairs', { hasText: '10 of 15 pairs' }).waitFor();
  await expect.poll(() => phone.page.locator('.notes li').count()).toBe(10);
  expect(await phone.page.locator('.status').textContent()).toMatch(/rest the nose|Half a minute/);

  await strip('VETI');
  await phone.page.locator('.sheet-row', { hasText: 'ANIS' }).tap();
  await dipNext('ANIS');
  await phone.page.locator('.fan').waitFor();
  expect(await phone.page.locator('.fan').getAttribute('aria-label')).toMatch(/ANIS/);
  expect(await phone.page.locator('.fan').getAttribute('aria-label')).not.toMatch(/VETI/);

  await h.done();
  const judged = (await phone.page.locator('.say').textContent())!.replace('Your verdict on ', '');
  expect(judged.split(' + ')).toHaveLength(2); // the two liked best
  await phone.page.locator('.fold', { hasText: 'Liked 9 of 9' }).waitFor(); // as its note says, and not asked again
  await h.choose('Keep');
  await h.tap('Take it to a formula');
  await h.sees('The formula');
  expect(
    await phone.page
      .locator('.field input')
      .evaluateAll((boxes) => boxes.map((box) => (box as HTMLInputElement).value)),
  ).toEqual([judged, '50', '50']);
  await h.finish();
  await expect.poll(() => phone.page.locator('h1').textContent()).toBe(judged);
  await phone.page.locator('.record .own', { hasText: 'liked 9 of 9' }).waitFor();
  await readNumbers();
});

test('what waits for its moment stands on the Bench, and a tap leads there', async () => {
  await phone.page.goto(`${site.url}#/`);
  await h.task('Layer strips');
  await h.pick('CARD');
  await h.sees('1 picked');
  await h.done();
  await dipNext('CARD');
  await phone.page.locator('.fan').waitFor();
  await h.pause();
  await readNumbers();
  await phone.page.locator('.due .entry', { hasText: /Smell CARD.*, at 5 min/ }).tap();
  await phone.page.locator('.fan').waitFor();
  await phone.page.goto(`${site.url}#/`);
});

test('a triangle of twelve triads, killed in the middle, says what it means', async () => {
  await phone.page.goto(`${site.url}#/`);
  await h.task('Blind test');
  await h.slot('test', 'Triangle');
  await h.slot('served', 'Someone else');
  await h.slot('sample.0', 'first lot');
  await h.slot('sample.1', 'second lot');
  await phone.page.getByText('8 of 12').waitFor();
  await h.done();
  await phone.page.locator('.code-list').waitFor();
  const odd = await phone.page.locator('.code-list li').evaluateAll((sets) =>
    sets.map((set) => {
      const cups = [...set.querySelectorAll('.cup')].map((cup) => (cup.textContent ?? '').trim());
      const holds = (cup: string) => cup.slice(3).trim();
      return cups.find((cup) => cups.filter((other) => holds(other) === holds(cup)).length === 1)!.slice(0, 3);
    }),
  );
  expect(odd).toHaveLength(12);
  await h.done();
  for (let i = 0; i < 12; i++) {
    for (let cup = 0; cup < 3; cup++) {
      await h.sees(/^Taste/);
      await readNumbers();
      if (i === 5 && cup === 1) {
        const said = await phone.page.locator('.say').textContent();
        await cutPower();
        await open();
        const resume = phone.page.getByRole('button', { name: /^Resume Triangle/ });
        const again = phone.page.getByRole('button', { name: 'Open Minim again' }); // killed while it wrote, the browser may lose a part
        await resume.or(again).first().waitFor();
        if (await again.count()) await again.tap();
        await resume.tap();
        await h.sees(said!);
      }
      await h.done();
    }
    await h.sees('Which one is odd?');
    const codes = await phone.page.locator('.code-tile').allTextContents();
    const named = i < 9 ? odd[i]! : codes.find((code) => code !== odd[i])!;
    await phone.page.locator('.code-tile', { hasText: named }).tap();
    await phone.page.locator('.code-tile.on', { hasText: named }).waitFor();
    await h.done();
    if (i < 11) await h.done(); // the rest; no one is held
  }
  await h.sees('9 of 12 right: this nose tells first lot from second lot.');
  await readNumbers();
  await h.finish();
  await phone.page.locator('.thing-words', { hasText: '9 of 12 right' }).waitFor();
  await readNumbers();
  expect(read).toBeGreaterThan(200);
});
