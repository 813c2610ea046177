import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, onTestFailed, beforeEach, test } from 'vitest';
import { inspector } from './audit/inspect';
import { everyRecord } from './audit/pages';
import { newProfile, openPhone, serve, type Phone } from './phone';
import { drawnPicture, withExif } from './pictureFiles';

const shelfFile = resolve(import.meta.dirname, '../fixtures/backups/v1.json');
const stored = JSON.parse(readFileSync(shelfFile, 'utf8')) as { records: { id: string; kind: string }[] };
const vial = stored.records.find(({ kind }) => kind === 'vial')!.id; // CARD
const run = stored.records.find(({ kind }) => kind === 'run')!.id;

interface PictureRecord {
  readonly id: string;
  readonly kind: string;
  readonly data: string;
  readonly width: number;
  readonly height: number;
  readonly bytes: number;
}

let site: Awaited<ReturnType<typeof serve>>;
let profile: ReturnType<typeof newProfile>;
let phone: Phone;
let wide: Buffer;
let sideways: Buffer;

/** Kinds that were read as a whole since the page was opened. */
const readKinds = () => phone.page.evaluate(() => (globalThis as unknown as { readKinds: string[] }).readKinds);

async function open(): Promise<void> {
  phone = await openPhone(profile.dir, { home: site.url });
  await phone.page.addInitScript(() => {
    const kinds: unknown[] = [];
    Object.assign(globalThis, { readKinds: kinds });
    const getAll = IDBIndex.prototype.getAll;
    IDBIndex.prototype.getAll = function (query, count) {
      kinds.push(query);
      return getAll.call(this, query, count);
    };
  });
  await phone.page.goto(site.url);
  await phone.page.locator('.tasks .card').first().waitFor();
}

async function goTo(hash: string): Promise<Page> {
  await phone.page.evaluate((hash) => (location.hash = hash), hash);
  return phone.page;
}

/** Adds photos from behind ⋯; gives what is said then. */
async function add(of: string, name: 'camera' | 'photos', files: { name: string; type: string; buffer: Buffer }[]) {
  const page = await goTo(`#/record/${of}`);
  await page.getByRole('button', { name: 'More', exact: true }).tap();
  const input = page.locator(`dialog input[name=${name}]`);
  await input.setInputFiles(files.map(({ type, ...file }) => ({ ...file, mimeType: type })));
  const told = page.locator('.photos [role=status]', { hasText: 'Stored' });
  await told.waitFor();
  const said = await told.textContent();
  await page.keyboard.press('Escape');
  await page.locator('dialog').waitFor({ state: 'detached' });
  return said;
}

const photoRecords = async () =>
  ((await everyRecord(phone.page)) as unknown as PictureRecord[]).filter(({ kind }) =>
    ['photo', 'picture'].includes(kind),
  );
const shown = (many: number) =>
  phone.page.waitForFunction((many) => {
    const found = [...document.querySelectorAll<HTMLImageElement>('.photo-list img')];
    return (
      document.querySelector('.record') &&
      found.length === many &&
      found.every((img) => img.complete && img.naturalWidth > 0)
    );
  }, many);

beforeAll(async () => {
  site = await serve();
  profile = newProfile();
  await open();
  await goTo('#/keeping');
  await phone.page.locator('input[name=backup]').setInputFiles(shelfFile);
  await phone.page.getByRole('button', { name: 'Restore' }).tap();
  await phone.page.getByText('Restored. Both copies').waitFor();
  wide = await drawnPicture(phone.page, 'image/png', 2400, 1600);
  sideways = withExif(await drawnPicture(phone.page, 'image/jpeg', 3000, 2000), 6, 'taken at 51.5 N 0.1 W');
});
beforeEach((context) => {
  onTestFailed(async () => {
    await phone.page.screenshot({ path: `tests/output/photo ${context.task.name.slice(0, 40)}.png` }).catch(() => {});
  });
});
afterAll(async () => {
  await phone.context.close();
  await site.stop();
  profile.forget();
});

test('a photo is made small, told in size, and shown', async () => {
  const said = await add(vial, 'photos', [{ name: 'a.png', type: 'image/png', buffer: wide }]);
  await shown(1);
  const [photo, picture] = (await photoRecords()).sort((a, b) => (a.kind < b.kind ? -1 : 1));
  expect(photo).toMatchObject({ of: vial, width: 1280, height: 853 });
  expect(photo!.bytes).toBe(Buffer.from(picture!.data, 'base64').length);
  expect(photo!.bytes).toBeLessThanOrEqual(250_000);
  console.info(`PNG of ${wide.length} bytes is stored in ${photo!.bytes}`);
  expect(said).toBe(`Stored: 1 photo, ${Math.round(photo!.bytes / 1000)} kB.`);
  const alt = await phone.page.locator('.photo-list img').getAttribute('alt');
  expect(alt).toMatch(/^Photo of CARD\b.*, taken .*\d{4}/);
  expect(phone.complaints).toEqual([]);
});

test('one that was taken sideways stands upright, and what else was in the file is gone', async () => {
  await add(run, 'camera', [{ name: 'b.jpg', type: 'image/jpeg', buffer: sideways }]);
  await shown(1);
  const photo = (await photoRecords()).find((one) => (one as unknown as { of?: string }).of === run)!;
  expect([photo.width, photo.height]).toEqual([853, 1280]);
  console.info(`JPEG of ${sideways.length} bytes is stored in ${photo.bytes}`);
  expect(photo.bytes).toBeLessThan(sideways.length / 3);
  const picture = (await photoRecords()).find(({ id }) => id === (photo as unknown as { picture: string }).picture)!;
  const bytes = Buffer.from(picture.data, 'base64').toString('latin1');
  expect([bytes.includes('Exif'), bytes.includes('51.5 N')]).toEqual([false, false]);
  // What was left, red, is at the top now.
  const [top, bottom] = await phone.page.evaluate(() => {
    const img = document.querySelector<HTMLImageElement>('.photo-list img')!;
    const canvas = document.createElement('canvas');
    Object.assign(canvas, { width: 1, height: 2 });
    const context = canvas.getContext('2d')!;
    context.drawImage(img, 0, 0, 1, 2);
    const { data } = context.getImageData(0, 0, 1, 2);
    return [data[0]! - data[2]!, data[4]! - data[6]!];
  });
  expect(top).toBeGreaterThan(60);
  expect(bottom).toBeLessThan(-60);
  await goTo('#/book');
  await phone.page.locator('.page-of-book .photo-list img').first().waitFor();
});

test('a file that is no picture is answered with one sentence, and the others are stored', async () => {
  const page = await goTo(`#/record/${vial}`);
  const text = { name: 'a.jpg', mimeType: 'image/jpeg', buffer: Buffer.from('no picture at all') };
  const small = { name: 'b.png', mimeType: 'image/png', buffer: await drawnPicture(page, 'image/png', 40, 30) };
  await page.getByRole('button', { name: 'More', exact: true }).tap();
  await page.locator('dialog input[name=photos]').setInputFiles([text, small]);
  const sentence = 'This picture cannot be read: choose a JPEG, PNG or WebP file.';
  await page.locator('.photos [role=alert]', { hasText: sentence }).waitFor();
  await page.keyboard.press('Escape');
  await shown(2);
  expect((await photoRecords()).filter(({ width }) => width === 40)).toHaveLength(1); // never made larger
});

test('what was stored is there after the browser was killed, and no start reads a picture', async () => {
  const before = await photoRecords();
  await phone.kill();
  await open();
  await phone.page.waitForTimeout(1500);
  expect(await readKinds()).toContain('photo');
  expect(await readKinds()).not.toContain('picture');
  expect(await photoRecords()).toEqual(before);
  await goTo(`#/record/${vial}`);
  await shown(2);
});

test('when the store is lost, the journal brings every photo back', async () => {
  const before = await photoRecords();
  await phone.page.goto(`${site.url}icon.svg`);
  await phone.page.evaluate(
    () => new Promise((resolve) => (indexedDB.deleteDatabase('minim').onsuccess = () => resolve(null))),
  );
  await phone.page.goto(site.url);
  await phone.page.getByText('Nothing is missing').waitFor();
  expect(await photoRecords()).toEqual(before);
  await goTo('#/keeping');
  await phone.page.getByRole('button', { name: 'Check all entries now' }).tap();
  await phone.page.getByText(/Compared .* in both copies/).waitFor();
  await phone.page.getByText(/^3 photos \(.*\); a backup has room for 60 MB of them\.$/).waitFor();
});

test('a backup, locked or not, brings them back byte for byte, and says how many they are', async () => {
  const before = await everyRecord(phone.page);
  for (const passphrase of ['', 'a made-up phrase']) {
    await goTo('#/keeping');
    await phone.page.locator('input[name=passphrase]').fill(passphrase);
    const [download] = await Promise.all([
      phone.page.waitForEvent('download'),
      phone.page.getByRole('button', { name: 'Save a backup as a file' }).tap(),
    ]);
    const path = await download.path();
    await phone.page.getByText(/^Done: .* records, 3 photos \(/).waitFor();
    await phone.page.getByRole('button', { name: 'Erase everything on this device' }).tap();
    await Promise.all([
      phone.page.waitForEvent('load'),
      phone.page.getByRole('button', { name: 'Erase it all' }).tap(),
    ]);
    await phone.page.locator('.tasks .card').first().waitFor();
    expect(await everyRecord(phone.page)).toEqual([]);
    await goTo('#/keeping');
    await phone.page.locator('input[name=backup]').setInputFiles(path);
    if (passphrase) {
      const box = phone.page.locator('section', { hasText: 'This backup is locked' }).last();
      await box.locator('input').fill(passphrase);
      await box.getByRole('button', { name: 'Open' }).tap();
    }
    await phone.page.getByText(/^A backup of .*, with 3 photos \(.*\)\.$/).waitFor();
    await phone.page.getByRole('button', { name: 'Restore', exact: true }).tap();
    await phone.page.getByText('Restored. Both copies').waitFor();
    const after = (await everyRecord(phone.page)).filter(({ kind }) => kind !== 'device'); // named as the backup left it
    expect(after).toEqual(before.filter(({ kind }) => kind !== 'device'));
  }
});

test('a photo opens large, closes with Escape, and is removed after a question', async () => {
  const page = await goTo(`#/record/${run}`);
  await shown(1);
  await page.locator('.photo-list button').tap();
  await page.locator('.photo-page img').waitFor();
  await page.keyboard.press('Escape');
  await shown(1);
  await page.locator('.photo-list button').tap();
  await page.getByRole('button', { name: 'Remove this photo' }).tap();
  await page.getByRole('button', { name: 'Keep it' }).tap();
  await page.getByRole('button', { name: 'Remove this photo' }).tap();
  await page.getByRole('button', { name: 'Remove it' }).tap();
  await shown(0);
  expect((await photoRecords()).map(({ kind }) => kind).sort()).toEqual(['photo', 'photo', 'picture', 'picture']);
  expect(phone.complaints).toEqual([]);
});

test('the photos of a page and a large one can be held in one hand and read by everybody', async () => {
  await phone.page.emulateMedia({ reducedMotion: 'reduce' });
  const audit = inspector(phone.page);
  await goTo(`#/record/${vial}`);
  await shown(2);
  await audit.inspect('photos of a vial');
  await phone.page.locator('.photo-list button').first().tap();
  await phone.page.locator('.photo-page img').waitFor();
  await audit.inspect('a photo');
  await phone.page.getByRole('button', { name: 'Remove this photo' }).tap();
  await audit.inspect('a photo, asked whether to remove it');
  expect(audit.found).toEqual([]);
});

test('a photo of something from the demo goes when the demo goes', async () => {
  const page = await goTo('#/keeping');
  await page.getByRole('button', { name: 'Erase everything on this device' }).tap();
  await Promise.all([page.waitForEvent('load'), page.getByRole('button', { name: 'Erase it all' }).tap()]);
  await page.locator('.tasks .card').first().waitFor();
  await goTo('#/shelf');
  await page.getByRole('button', { name: 'Look around a made-up workshop' }).tap();
  await page.locator('.demo-notice').waitFor();
  await page.waitForFunction(() => !document.querySelector('[aria-busy=true]'));
  const bottle = (await everyRecord(page)).find(({ kind }) => kind === 'bottle')!.id;
  await add(bottle, 'photos', [{ name: 'a.png', type: 'image/png', buffer: wide }]);
  expect(await photoRecords()).toHaveLength(2);
  await goTo('#/shelf');
  await page.getByRole('button', { name: 'Remove the demo' }).tap();
  await page.locator('.demo-notice').waitFor({ state: 'detached' });
  expect((await everyRecord(page)).filter(({ kind }) => kind !== 'settings' && kind !== 'gone')).toEqual([]); // of what was erased its id stays
});
