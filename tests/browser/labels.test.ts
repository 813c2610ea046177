import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, beforeEach, describe, expect, onTestFailed, test } from 'vitest';
import { preview } from 'vite';
import { codeTextOf, shortIdOf, spacedShortId } from '../../src/records/kind/shortId';
import { squareCodeOf } from '../../src/ui/label/squareCode';
import { blurred, codesIn, noisy, picture, readPng, turned } from '../pictures';
import { shelve, vialRecord } from './benchRecords';
import { heldUp, writeFilm } from './film';
import { countByHand } from './countByHand';
import { hand } from './hand';
import { readPdf } from './pdf';
import { newProfile, openPhone, type Phone } from './phone';

const [card, pgf, hex, long] = [
  vialRecord({ code: 'CARD', name: 'cardamom oil' }),
  vialRecord({ code: 'PGF', name: 'pink grapefruit oil', solvent: 'propylene-glycol' }),
  vialRecord({ code: 'HEX3', name: 'cis-3-hexenol', solvent: 'isopropanol-99', grade: 'smell only' }),
  vialRecord({
    code: 'LONG',
    name: 'a base with a very long name, as bases have them, from three houses',
    supplier: 'Northgate',
  }),
] as const;
const codeOf = (vial: { id: string }) => codeTextOf(shortIdOf(vial.id));

/** The strictest policy a host can set: nothing from elsewhere, no evaluated code but WebAssembly, no script address that is not vouched for. */
const POLICY = [
  "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; style-src 'self'; font-src 'self'; img-src 'self' data:",
  "connect-src 'self'; worker-src 'self'; manifest-src 'self'; base-uri 'none'; form-action 'none'",
  "require-trusted-types-for 'script'; trusted-types minim-worker",
].join('; ');

let site: { url: string; stop: () => Promise<void> };
let profile: ReturnType<typeof newProfile>;
let phone: Phone;
let sees: string | undefined;
const complaints: string[] = [];
const film = () => join(profile.dir, 'camera.y4m');

async function serveStrictly(): Promise<typeof site> {
  const headers = { 'Content-Security-Policy': POLICY };
  const server = await preview({
    base: '/bench/',
    preview: { port: 0, host: '127.0.0.1', headers },
    logLevel: 'error',
  });
  return { url: server.resolvedUrls!.local[0]!, stop: () => server.close() };
}

/** A page without a network; a new browser on the same profile where another camera is wanted, or none. */
async function open(page: string, camera?: string): Promise<void> {
  if (!phone || sees !== camera) {
    if (phone) await close();
    phone = await openPhone(profile.dir, { home: site.url, ...(camera ? { camera } : {}) });
    sees = camera;
  }
  await phone.context.setOffline(true);
  await phone.page.goto(`${site.url}#/${page}`);
}

async function close(): Promise<void> {
  complaints.push(...phone.complaints);
  await phone.context.close();
}

/** A choice of the set-up, which is folded away once it was made. Waits until the page shows it as chosen: it is stored first. */
async function choose(value: string): Promise<void> {
  const setUp = phone.page.locator('.set-up');
  if ((await setUp.getAttribute('open')) === null) await setUp.locator('> summary').tap();
  await setUp.locator(`.label-chips input[value="${value}"]`).check();
  await setUp.locator(`.label-chips .chosen input[value="${value}"]`).waitFor();
}
const preparing = () => phone.page.locator('.label-preview .label text').first().waitFor();

/** What the app hands over as a picture. */
async function savedPicture(): Promise<{ name: string; bytes: Buffer }> {
  const [saved] = await Promise.all([
    phone.page.waitForEvent('download'),
    phone.page.getByRole('button', { name: 'Save picture' }).tap(),
  ]);
  return { name: saved.suggestedFilename(), bytes: readFileSync(await saved.path()) };
}

async function printed() {
  return readPdf(await phone.page.pdf({ preferCSSPageSize: true, printBackground: true, tagged: false }));
}

beforeAll(async () => {
  site = await serveStrictly();
  profile = newProfile();
  phone = await openPhone(profile.dir, { home: site.url });
  await phone.page.goto(site.url);
  await phone.page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
  await shelve(phone.page, [card, pgf, hex, long]);
  await phone.page.locator('.tasks .card').first().waitFor();
});

beforeEach((context) => {
  onTestFailed(async () => {
    await phone.page.screenshot({ path: `tests/output/${context.task.name.slice(0, 40)}.png` });
  });
});

afterAll(async () => {
  await close();
  await site.stop();
  profile.forget();
  expect(complaints).toEqual([]);
});

describe('a label as a picture', () => {
  test('is reached from its vial, has exactly the printer’s dots, and is read back turned, blurred and noisy', async () => {
    await open(`record/${hex.id}`);
    await phone.page.getByRole('button', { name: 'Print label' }).tap();
    await preparing();
    const { name, bytes } = await savedPicture();
    expect(name).toBe('HEX3-1-cis-3-hexenol-30x20mm-203dpi.png');
    const label = readPng(bytes);
    expect([label.width, label.height, label.perMetre]).toEqual([240, 160, 7992]); // 30 × 20 mm at 203 dpi
    expect(new Set(label.grey)).toEqual(new Set([0, 255]));
    expect(await codesIn(label)).toEqual([codeOf(hex)]);
    for (const degrees of [0, 30, 90, 200])
      expect(await codesIn(noisy(blurred(turned(label, degrees, 2), 2), 20))).toEqual([codeOf(hex)]);
  });

  test.each([
    ['40x12', 203, [320, 96]],
    ['40x12', 300, [472, 142]],
    ['25x15', 203, [200, 120]],
    ['25x15', 300, [295, 177]],
    ['30x20', 300, [354, 236]],
    ['50x25', 203, [400, 200]],
    ['50x25', 300, [591, 295]],
  ] as const)('of %s mm at %i dpi is %j dots, and its code is read back', async (size, dpi, dots) => {
    await open(`labels/${card.id}`);
    await preparing();
    await choose(size);
    await choose(`printer${dpi}`);
    await phone.page.waitForFunction(
      (mm) => document.querySelector('.label-preview .label')?.getAttribute('viewBox') === `0 0 ${mm}`,
      size.replace('x', ' '),
    );
    const label = readPng((await savedPicture()).bytes);
    expect([label.width, label.height]).toEqual(dots);
    expect(await codesIn(label)).toEqual([codeOf(card)]);
  });

  test('says on the screen what found no room, instead of cutting it off', async () => {
    await open(`labels/${long.id},${pgf.id}`);
    await preparing();
    await choose('25x15');
    await phone.page.getByText('No room for').first().waitFor();
    expect(await phone.page.locator('.label-preview .trouble').textContent()).toMatch(
      /LONG.*No room for .*the end of the name/,
    );
    const shown = (await phone.page.locator('.label-preview .label text').allTextContents()).join(' ');
    expect(shown).toContain('LONG');
    expect(shown).not.toContain('Northgate');
    await choose('50x25');
    await phone.page.locator('.label-preview .trouble').waitFor({ state: 'detached' });
  });
});

describe('labels as the browser prints them', () => {
  test('one to a page of exactly the label’s size, with all its words', async () => {
    await open(`labels/${card.id},${hex.id}`);
    await preparing();
    await choose('50x25');
    await choose('printer203');
    await phone.page.getByRole('button', { name: 'Print 2 labels' }).waitFor();
    const pages = await printed();
    expect(pages).toHaveLength(2);
    for (const { widthMm, heightMm } of pages) {
      expect(widthMm).toBeCloseTo(50, 0);
      expect(heightMm).toBeCloseTo(25, 0);
    }
    const words = [
      'HEX3',
      '1 %',
      'SMELL ONLY',
      'cis-3-hexenol',
      '(1.05 ± 0.11) % w/v',
      'isopropanol 99 %',
      'made 2026-05-04',
    ];
    for (const word of [
      ...words,
      'use by 2027-05-04',
      'Northgate Botanicals',
      'lot HEX3-17',
      spacedShortId(shortIdOf(hex.id)),
    ])
      expect(pages[1]!.text).toContain(word);
  });

  test.each([
    ['A4', 210, 297],
    ['Letter', 215.9, 279.4],
  ] as const)('on %s, from the first free place on, all on one sheet', async (paper, widthMm, heightMm) => {
    await open(`labels/${[card, pgf, hex, long].map(({ id }) => id).join(',')}`);
    await preparing();
    await choose('30x20');
    await choose(paper);
    await choose('cut');
    await phone.page.getByRole('button', { name: 'Print 1 sheet' }).waitFor();
    const [page, ...more] = await printed();
    expect(more).toEqual([]);
    expect(page!.widthMm).toBeCloseTo(widthMm, 0);
    expect(page!.heightMm).toBeCloseTo(heightMm, 0);
    for (const word of ['CARD', 'PGF', 'HEX3', 'LONG', 'SMELL ONLY', 'pink grapefruit oil', 'use by 2027-05-04'])
      expect(page!.text).toContain(word);
    expect(page!.text).not.toContain('Print'); // nothing of the screen
    await hand(phone.page).type('first', '999');
    await phone.page.getByRole('alert').filter({ hasText: 'A sheet holds' }).waitFor();
    await hand(phone.page).type('first', '1');
  });

  test('without a printer what to write on each is shown, ticked off, and still ticked after a start', async () => {
    await open(`labels/${[card, hex].map(({ id }) => id).join(',')}`);
    await preparing();
    await choose('hand');
    const rows = phone.page.locator('.by-hand li');
    await rows.first().waitFor();
    expect(await rows.allTextContents()).toEqual([
      'CARD 1 %made\u00a02026-05-04, 1 ring around it, flammable',
      'HEX3 1 %SMELL ONLYmade\u00a02026-05-04, 1 ring around it, flammable',
    ]);
    await rows.nth(1).tap();
    await phone.page.getByText('1 of 2 written').waitFor();
    await phone.page.reload();
    await phone.page.getByText('1 of 2 written').waitFor();
    expect(await rows.nth(1).getByRole('checkbox').isChecked()).toBe(true);
    await choose('printer203');
    await preparing();
    const touched = phone.page.locator('.label-chips input[value="printer203"]');
    expect(await touched.evaluate((chip) => chip === document.activeElement)).toBe(true); // not drawn again under the finger
  });

  test('many at once are picked on the Shelf', async () => {
    await open('shelf');
    await phone.page.getByRole('button', { name: 'Print labels' }).tap();
    await phone.page.getByRole('button', { name: 'All 4' }).tap();
    await phone.page.getByText('PGF').tap();
    await phone.page.getByRole('button', { name: 'Continue with 3 labels' }).tap();
    await preparing();
    await choose('strip');
    await choose('printer203');
    await phone.page.getByRole('button', { name: 'Print 3 labels' }).waitFor();
    await phone.page.locator('.label-preview .label[viewBox="0 0 40 8"]').first().waitFor();
    const pages = await printed();
    expect(pages.map(({ widthMm, heightMm }) => [Math.round(widthMm), Math.round(heightMm)])).toEqual(
      Array(3).fill([40, 8]),
    );
    expect(pages.map(({ text }) => /LONG|HEX3|CARD/.exec(text)?.[0])).toEqual(['LONG', 'HEX3', 'CARD']);
  });
});

describe('scanning, without a network and under the strictest policy', () => {
  /** The very label that the app draws, held before the camera. */
  async function labelFilm(foreign: string | null): Promise<void> {
    await open(`labels/${card.id}`);
    await preparing();
    await choose('30x20');
    await choose('printer203');
    await phone.page.waitForTimeout(300);
    const label = heldUp(readPng((await savedPicture()).bytes), { degrees: 12, scale: 1.8 });
    const scenes = [{ picture: label, tenths: 15 }];
    if (foreign) scenes.unshift({ picture: heldUp(foreignCode(foreign), { degrees: -8, scale: 2 }), tenths: 15 });
    writeFilm(film(), scenes);
  }

  function foreignCode(text: string) {
    const { side, dark } = squareCodeOf(text);
    return picture((side + 8) * 4, (side + 8) * 4, (x, y) => (dark((x >> 2) - 4, (y >> 2) - 4) ? 0 : 255));
  }

  test('one tap on the Bench opens the camera, a foreign code is ignored, a label opens its record', async () => {
    await labelFilm('https://example.com/<img src=x onerror=alert(1)>');
    await open('', film());
    await phone.page.getByRole('button', { name: 'Scan a label' }).tap();
    await phone.page.getByText('That is not a label of Minim.').waitFor();
    expect(phone.page.url()).toContain('#/scan');
    await phone.page.locator('.record h1', { hasText: 'cardamom oil' }).waitFor();
    expect(phone.page.url()).toContain(card.id);
    expect(await phone.page.content()).not.toContain('example.com');
  });

  test('in Count drops the right vial is confirmed, and the wrong one is stopped until it is put back', async () => {
    const h = hand(phone.page);
    await phone.page.goto(`${site.url}#/new/count`);
    await countByHand(phone.page, { 'CARD 1 %': '2', HEX3: '2' });
    await h.done();
    await h.sees('Take CARD');
    await h.tap('Scan its label');
    await phone.page.getByRole('button', { name: '✓ It is CARD 1 %' }).waitFor();
    await h.drops(2);
    await h.done();
    await h.sees('Take HEX3');
    await h.tap('Scan its label');
    await phone.page.getByText('Stop: this is CARD 1 %.').waitFor();
    expect(await phone.page.locator('.pad').count()).toBe(0);
    await h.tap('Count without a label');
    await phone.page.locator('.pad').waitFor();
    expect(await h.count()).toBe(0);
  });

  test('a light beside the camera is offered, goes on and off, and goes out with the camera', async () => {
    const plain = join(profile.dir, 'bench.y4m');
    writeFilm(plain, [
      {
        picture: heldUp(
          picture(8, 8, () => 255),
          { degrees: 0, scale: 1 },
        ),
        tenths: 5,
      },
    ]);
    await open('', plain);
    await phone.page.addInitScript(giveTheCameraALight);
    await phone.page.reload();
    await phone.page.getByRole('button', { name: 'Scan a label' }).tap();
    await phone.page.getByRole('button', { name: 'Light on', pressed: false }).tap();
    await phone.page.getByRole('button', { name: 'Light off', pressed: true }).tap();
    await phone.page.getByRole('button', { name: 'Light on', pressed: false }).tap();
    await phone.page.getByRole('button', { name: 'Light off', pressed: true }).waitFor();
    await expect.poll(light).toEqual({ asked: [true, false, true], camera: 'live' });
    await phone.page.evaluate(() => {
      globalThis.light.track!.stop();
      globalThis.light.track!.dispatchEvent(new Event('ended')); // a phone takes the camera away and gives it back
    });
    await phone.page.getByRole('button', { name: 'Light on', pressed: false }).tap();
    await phone.page.getByRole('button', { name: 'Light off', pressed: true }).waitFor();
    await expect.poll(light).toEqual({ asked: [true, false, true, true], camera: 'live' });
    await phone.page.getByRole('button', { name: 'Back', exact: true }).tap();
    await phone.page.locator('.tasks .card').first().waitFor();
    await expect.poll(async () => (await light()).camera).toBe('ended'); // a light is lit by its camera alone
  });

  test('a camera that comes only when the page was left goes out at once', async () => {
    await phone.page.evaluate(holdTheCameraBack);
    await phone.page.getByRole('button', { name: 'Scan a label' }).tap();
    await expect.poll(() => phone.page.evaluate(() => globalThis.late.asked)).toBe(true);
    await phone.page.getByRole('button', { name: 'Back', exact: true }).tap();
    await phone.page.locator('.tasks .card').first().waitFor();
    await phone.page.evaluate(() => globalThis.late.give());
    await expect.poll(() => phone.page.evaluate(() => globalThis.late.tracks)).toEqual(['ended']);
  });

  test('another app that takes the camera takes the light with it, and the screen says so', async () => {
    await phone.page.getByRole('button', { name: 'Scan a label' }).tap();
    await phone.page.getByRole('button', { name: 'Light on' }).tap();
    await phone.page.getByRole('button', { name: 'Light off' }).waitFor();
    await phone.page.evaluate(() => {
      navigator.mediaDevices.getUserMedia = () => Promise.reject(new DOMException('', 'NotReadableError'));
      globalThis.light.track!.stop();
      globalThis.light.track!.dispatchEvent(new Event('ended'));
    });
    await phone.page.getByText('Another app is using the camera.').waitFor();
    expect(await phone.page.locator('.torch').count()).toBe(0);
  });

  test('a light that the camera does not switch is offered no more', async () => {
    await phone.page.reload();
    await phone.page.getByRole('button', { name: 'Light on' }).waitFor();
    await phone.page.evaluate(() => (globalThis.light.broken = true));
    await phone.page.getByRole('button', { name: 'Light on' }).tap();
    await phone.page.locator('.torch').waitFor({ state: 'detached' });
    expect((await light()).camera).toBe('live');
  });

  test.each([
    ['that is not there', undefined, /^There is no camera here\. Type the code from the label\.$/],
    ['that is refused', 'refused', /^Minim may not use the camera\. Allow it .*, or type the code from the label\.$/],
  ])('beside a camera %s the code or the short id is typed', async (_, camera, sentence) => {
    await open('scan', camera);
    const view = phone.page.locator('.scanner .view');
    await view.getByText(sentence).waitFor();
    expect(await view.locator('video').isVisible()).toBe(false);
    expect(await phone.page.getByText('Hold the square code').count()).toBe(0);
    await phone.page.locator('[name=shortId]').pressSequentially('QQQQ');
    await phone.page.getByText('Nothing on the Shelf has that on its label.').waitFor();
    await phone.page.locator('[name=shortId]').fill('');
    await phone.page.locator('[name=shortId]').pressSequentially(shortIdOf(pgf.id).slice(0, 4).toLowerCase());
    await phone.page.getByRole('button', { name: 'PGF' }).tap();
    await phone.page.locator('.record h1', { hasText: 'pink grapefruit oil' }).waitFor();
  });
});

/** What the light beside the camera was asked, and its camera. */
interface Light {
  asked: boolean[];
  track?: MediaStreamTrack;
  broken: boolean;
}
/** A camera that is kept waiting: whether it was asked for, the way to give it, and its tracks once it was given. */
interface Late {
  asked: boolean;
  give: () => void;
  readonly tracks: MediaStreamTrack['readyState'][] | null;
}
declare global {
  var light: Light;
  var late: Late;
}

/** Gives the page its camera only when the test says so, once; all else is the browser's own. */
function holdTheCameraBack(): void {
  const { getUserMedia } = MediaDevices.prototype;
  let given: MediaStream | null = null;
  const waited = new Promise<void>((give) => {
    globalThis.late = {
      asked: false,
      give,
      get tracks() {
        return given && given.getTracks().map(({ readyState }) => readyState);
      },
    };
  });
  navigator.mediaDevices.getUserMedia = async (constraints) => {
    globalThis.late.asked = true;
    delete (navigator.mediaDevices as Partial<MediaDevices>).getUserMedia; // the next one is given as ever
    const stream = await getUserMedia.call(navigator.mediaDevices, constraints);
    await waited;
    return (given = stream);
  };
}

/** No camera of a test machine has a light, and no switch of Chromium adds one: one is said to be there, and what it is asked is written down. All else is the browser's own. */
function giveTheCameraALight(): void {
  const light: Light = { asked: [], broken: false };
  globalThis.light = light;
  const { getCapabilities, applyConstraints } = MediaStreamTrack.prototype;
  MediaStreamTrack.prototype.getCapabilities = function () {
    return { ...getCapabilities.call(this), torch: true };
  };
  MediaStreamTrack.prototype.applyConstraints = async function (constraints) {
    light.track = this;
    if (light.broken) return applyConstraints.call(this, constraints); // refuses: there is none
    for (const set of (constraints?.advanced ?? []) as { torch?: boolean }[]) light.asked.push(set.torch!);
  };
}

const light = () =>
  phone.page.evaluate(() => ({ asked: globalThis.light.asked, camera: globalThis.light.track?.readyState }));
