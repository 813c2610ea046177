import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { material, pipette, vialOf } from '../tasks/count/countShelf';
import { shelve } from './benchRecords';
import { countByHand } from './countByHand';
import { hand } from './hand';
import { newProfile, openPhone, serve, type Phone } from './phone';

/** What comes out of the phone's loudspeaker, and the buttons of headphones: outside of the page. */
interface Outside {
  said: { text: string; voice: string | undefined }[];
  tones: number[];
  players: HTMLMediaElement[];
  buttons: Map<string, () => void>;
  broken: boolean;
  pointers: number;
}
declare global {
  var outside: Outside;
}

let site: Awaited<ReturnType<typeof serve>>;
let profile: ReturnType<typeof newProfile>;
let phone: Phone;
let page: Page;
let h: ReturnType<typeof hand>;

/** A browser without a display has no voices: it is given three, and what would be said is written down. All else goes its way. */
function listenAtTheLoudspeaker(): void {
  const outside: Outside = { said: [], tones: [], players: [], buttons: new Map(), broken: false, pointers: 0 };
  globalThis.outside = outside;
  const voices = [
    { name: 'far', lang: 'en-GB', localService: false, default: true },
    { name: 'other', lang: 'de-DE', localService: true, default: false },
    { name: 'near', lang: 'en-US', localService: true, default: false },
  ];
  speechSynthesis.getVoices = () => voices as unknown as SpeechSynthesisVoice[];
  Object.defineProperty(SpeechSynthesisUtterance.prototype, 'voice', { value: undefined, writable: true });
  speechSynthesis.speak = ({ text, voice }) => {
    if (outside.broken) throw new Error('no engine');
    if (text.trim() !== '') outside.said.push({ text, voice: voice?.name });
  };
  const start = OscillatorNode.prototype.start;
  OscillatorNode.prototype.start = function (when) {
    if (outside.broken) throw new Error('no loudspeaker');
    outside.tones.push(this.frequency.value);
    start.call(this, when);
  };
  const play = HTMLMediaElement.prototype.play;
  HTMLMediaElement.prototype.play = function () {
    outside.players.push(this);
    return play.call(this);
  };
  const handle = MediaSession.prototype.setActionHandler;
  MediaSession.prototype.setActionHandler = function (action, handler) {
    if (handler) outside.buttons.set(action, () => handler({ action }));
    else outside.buttons.delete(action);
    handle.call(this, action, handler);
  };
  addEventListener('pointerdown', () => outside.pointers++, true);
}

const said = () => page.evaluate(() => outside.said.splice(0).map(({ text }) => text));
const tones = () => page.evaluate(() => outside.tones.splice(0));
const switchOn = (title: string) =>
  page.locator('fieldset', { hasText: title }).locator('label.choice', { hasText: 'On' }).tap();

/** Presses a key, and waits until this many drops are shown. */
async function press(key: string, count: number): Promise<void> {
  await page.waitForTimeout(70); // a foot is no faster
  await page.keyboard.press(key);
  await shows(count);
}

const shows = (count: number) =>
  page.waitForFunction((n) => document.querySelector('.pad .count')?.textContent === String(n), count);

/** Waits for something to be said, and gives all that was said until then. */
async function hears(words: string): Promise<string[]> {
  await page.waitForFunction((words) => outside.said.some(({ text }) => text.includes(words)), words);
  return said();
}

/** Up to the pad: these drops of these vials, typed by hand. */
async function toThePad(drops: Record<string, string>): Promise<void> {
  await page.goto(`${site.url}#/new/count`);
  await countByHand(page, Object.fromEntries(Object.entries(drops).map(([id, many]) => [id.toUpperCase(), many])));
  await h.done();
  await page.locator('.pad').waitFor();
}

beforeAll(async () => {
  site = await serve();
  profile = newProfile();
  phone = await openPhone(profile.dir, { home: site.url });
  page = phone.page;
  await phone.context.addInitScript(listenAtTheLoudspeaker);
  h = hand(page);
  await page.goto(site.url);
  await page.locator('.tasks .card').first().waitFor();
  await shelve(page, [material('card'), material('hex'), ...pipette, vialOf('card', 0.01), vialOf('hex', 0.005)]);
});

afterAll(async () => {
  await phone.context.close();
  await site.stop();
  profile.forget();
});

describe('before anything is switched on', () => {
  test('nothing is said, nothing heard but one too many, and only Enter and Space count, while the pad has the focus', async () => {
    await toThePad({ card: '2' });
    for (const key of ['Enter', 'Space']) await page.keyboard.press(key);
    await page.getByText('Enter was not counted').or(page.getByText('Space was not counted')).waitFor();
    await page.locator('.pad').focus();
    await press('Enter', 1);
    await press('Space', 2);
    for (const key of ['PageDown', 'PageUp', 'q', 'b', 'Enter']) await page.keyboard.press(key); // Enter ends what may be a typed line
    expect(await tones()).toEqual([]);
    await press('Enter', 3);
    await page.waitForFunction(() => outside.tones.length > 0); // one too many is always heard
    expect(new Set(await tones()).size).toBe(1);
    expect(await said()).toEqual([]);
    expect(await page.evaluate(() => outside.players.length)).toBe(0);
  });
});

describe('the settings', () => {
  test('voice and sounds can be tried, and are switched on', async () => {
    await page.goto(`${site.url}#/settings`);
    await h.tap('Try it: a step and its last drop');
    expect((await hears('Stop, that is all'))[0]).toContain('Count 12 drops');
    await h.tap('Try it: two drops');
    await page.waitForFunction(() => outside.tones.length > 0);
    for (const title of ['Say steps', 'A tick for each', 'Foot switch', 'Buttons of headphones']) await switchOn(title);
  });

  test('a key is taught by pressing it, and the phone remembers it', async () => {
    const listens = page.getByText('Press your foot switch or remote now');
    await h.tap('Count a drop');
    await listens.waitFor();
    await page.keyboard.press('q');
    await page.getByText('Heard Q: it counts a drop now.').waitFor();
    await h.tap('Next step');
    await listens.waitFor();
    await page.keyboard.press('Enter');
    await page.getByText('Heard Enter. It can only count a drop.').waitFor();
    for (const [does, key] of [
      ['Count a drop', 'Enter'],
      ['Next step', 'b'],
    ] as const) {
      await h.tap(does);
      await listens.waitFor();
      await page.keyboard.press(key);
      await page.getByText(`Heard ${key === 'b' ? 'B' : key}: it`).waitFor();
    }
    await page.reload();
    await page.locator('.entry', { hasText: 'Count a drop' }).getByText('Taught: Q, Enter').waitFor();
  });
});

describe('a whole count by keys, without a touch and without a look', () => {
  test('the first vial is read out, and each drop says where the count stands', async () => {
    await toThePad({ card: '5', hex: '2' });
    const heard = await hears('Take CARD');
    expect(heard.at(-1)).toBe('Take CARD 1 % by weight. Count 5 drops.');
    await page.evaluate(() => (outside.pointers = 0));
    await tones();
    await press('PageDown', 1);
    await press('q', 2);
    await press('Enter', 3);
    await press('AudioVolumeUp', 4);
    await press('b', 4); // too early to go on
    expect(await hears('1 left.')).toEqual(['1.', '2, 3 left.', '3, 2 left.', '4, 1 left.', '1 left.']);
    await press('MediaPlayPause', 5);
    expect(await hears('Stop')).toEqual(['5. Stop, that is all.']);
    const [tick, ...more] = await tones();
    expect(more.slice(0, 3)).toEqual([tick, tick, tick]);
    expect(more.slice(3).length).toBeGreaterThan(0);
    expect(more.slice(3)).not.toContain(tick);
  });

  test('one too many is said, and taken back', async () => {
    await press('ArrowRight', 6);
    expect(await hears('too many')).toEqual(['6. One too many.']);
    await press('PageUp', 5);
    expect(await hears('taken back')).toEqual(['Drop 6 taken back. 5. Stop, that is all.']);
  });

  test('a held key counts once; on a button that has the focus, Space is that button’s', async () => {
    await page.keyboard.press('b');
    expect(await hears('Take HEX')).toEqual(['Take HEX 0.5 % by weight. Count 2 drops.']);
    for (const [key, count] of [
      ['PageDown', 1],
      ['q', 2],
      ['Enter', 3],
    ] as const) {
      for (let held = 0; held < 3; held++) {
        await page.keyboard.down(key);
        await page.waitForTimeout(70); // longer than a bounce
      }
      await page.keyboard.up(key);
      await shows(count);
    }
    await page.getByRole('button', { name: 'Undo' }).focus();
    await press('Space', 2);
    await press('PageUp', 1);
    await press('q', 2);
    expect(await said()).toEqual([
      '1, 1 left.',
      '2. Stop, that is all.',
      '3. One too many.',
      'Drop 3 taken back. 2. Stop, that is all.',
      'Drop 2 taken back. 1, 1 left.',
      '2. Stop, that is all.',
    ]);
  });

  test('it ends on the page of the trial; nothing was touched, and no voice from afar was asked', async () => {
    await press('PageUp', 1);
    await press('q', 2);
    expect(await page.evaluate(() => [...new Set(outside.said.map(({ voice }) => voice))])).toEqual(['near']);
    await page.keyboard.press('b');
    await page.locator('.record').waitFor();
    expect(await page.evaluate(() => outside.pointers)).toBe(0);
  });
});

describe('a third count', () => {
  test('goes on where the voice and the loudspeaker break', async () => {
    await toThePad({ hex: '3' });
    await page.evaluate(() => (outside.broken = true));
    await press('PageDown', 1);
    await press('q', 2);
    await page.evaluate(() => (outside.broken = false));
    await said();
  });

  test('hears the buttons of headphones while silence plays, which ends with the run', async () => {
    await page.waitForFunction(() => outside.players.some((player) => player.currentTime > 0 && player.loop));
    const button = async (name: string) => {
      await page.waitForTimeout(70);
      await page.evaluate((name) => outside.buttons.get(name)!(), name);
    };
    await button('pause');
    await shows(3);
    expect(await hears('Stop')).toEqual(['3. Stop, that is all.']);
    await button('play');
    await shows(4);
    await button('previoustrack');
    await shows(3);
    await button('nexttrack');
    await page.locator('.record').waitFor();
    await expect.poll(() => page.evaluate(() => outside.buttons.size)).toBe(0);
    await expect.poll(() => page.evaluate(() => outside.players.every((player) => player.paused))).toBe(true);
  });

  test('nothing complained', () => expect(phone.complaints).toEqual([]));
});
