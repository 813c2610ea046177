import { mkdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { newRecord } from '../../src/records/shelf';
import { bottle, type Any } from '../records/backup/histories';
import { vialOf } from '../tasks/count/countShelf';
import { newProfile, openPhone, serve, type Phone } from './phone';

let site: Awaited<ReturnType<typeof serve>>;
let devices: (Phone & { dir: string; forget: () => void })[];
const pictures = process.env['SHOTS'];

const material = newRecord('material', {
  id: 'm',
  name: 'rhubarb extract',
  code: 'RHU',
  sort: 'natural',
  form: 'liquid',
  cautions: [],
});
const vial = { ...vialOf('v', 0.01, { material: 'm' }), code: 'RHU', from: ['b'], uses: [{ id: 'b', massG: 0.5 }] };
const shelf = [material, bottle('b', { lot: 'C-2208' }), vial] as unknown as Any[];
const events: object[] = [];

beforeAll(async () => {
  site = await serve();
  devices = [];
  for (const name of ['Phone', 'Tablet']) {
    const profile = newProfile();
    const device = { ...(await openPhone(profile.dir, { home: site.url })), ...profile };
    devices.push(device);
    await device.page.goto(site.url);
    await device.page.locator('.tasks .card').first().waitFor();
    await call(device, name);
  }
});

afterAll(async () => {
  for (const { context, forget } of devices ?? []) {
    await context.close();
    forget();
  }
  await site?.stop();
});

async function call({ page }: Phone, name: string): Promise<void> {
  await page.goto(`${site.url}#/settings`);
  const box = page.locator('input[name=device]');
  await box.fill(name);
  await box.blur();
  await page.goto(`${site.url}#/keeping`);
}

async function bring({ page }: Phone, text: string): Promise<void> {
  await page.goto(`${site.url}#/`);
  await page.goto(`${site.url}#/keeping`);
  const file = { name: 'other.json', mimeType: 'application/json', buffer: Buffer.from(text) };
  await page.locator('input[name=backup]').setInputFiles(file);
  await page.locator('.restore').waitFor();
  const nothing = page.getByRole('button', { name: 'Nothing to do' });
  if (await nothing.isVisible()) return page.getByRole('button', { name: 'Leave it' }).tap();
  await page.getByRole('button', { name: 'Restore', exact: true }).tap();
  await page.getByText('Restored. Both copies').waitFor();
}

async function backupOf({ page, dir }: Phone & { dir: string }): Promise<string> {
  await page.goto(`${site.url}#/keeping`);
  const saved = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save a backup' }).tap();
  const path = join(dir, 'saved.json');
  await (await saved).saveAs(path);
  return readFileSync(path, 'utf8');
}

async function change({ page }: Phone, id: string, texts: Record<string, string>): Promise<void> {
  await page.goto(`${site.url}#/record/${id}`);
  await page.goto(`${site.url}#/record/${id}/edit`);
  for (const [name, text] of Object.entries(texts)) await page.locator(`input[name="${name}"]`).fill(text);
  await page.getByRole('button', { name: 'Save' }).tap();
  await page.locator('.record').first().waitFor();
}

async function shot({ page }: Phone, name: string): Promise<void> {
  if (!pictures) return;
  mkdirSync(pictures, { recursive: true });
  for (const colorScheme of ['light', 'dark'] as const)
    for (const width of [360, 390]) {
      await page.emulateMedia({ colorScheme });
      await page.setViewportSize({ width, height: width === 360 ? 740 : 844 });
      await page.waitForTimeout(300);
      await page.screenshot({ path: resolve(pictures, `${name}-${width}-${colorScheme}.png`) });
    }
}

const content = (text: string) => text.replace(/"made": "[^"]*",\n "holds"/, '"holds"'); // when the file was made is its own

test('that both changed a thing exchange files, a person chooses once, and both hold the same, byte for byte', async () => {
  const [phone, tablet] = devices as [(typeof devices)[0], (typeof devices)[0]];
  const head = { format: 'minim-backup', version: 1, made: '2026-05-04T10:00:00.000Z' };
  const first = JSON.stringify({ ...head, holds: { records: 3, events: 0 }, records: shelf, events });
  for (const device of devices) await bring(device, first);
  await change(phone, 'b', { box: 'B12', supplier: 'Saltmarsh' });
  await change(tablet, 'b', { box: 'Fridge door', row: '4' });

  await bring(phone, await backupOf(tablet));
  await bring(tablet, await backupOf(phone));
  await bring(phone, await backupOf(tablet));
  expect(content(await backupOf(phone))).toBe(content(await backupOf(tablet)));

  const { page } = phone;
  await page.goto(`${site.url}#/`);
  await page.getByText('1 thing is different on your devices.').waitFor();
  await shot(phone, 'apart-bench');
  await page.getByRole('button', { name: 'Choose' }).tap();
  await page.locator('.apart .side').nth(1).waitFor();
  const sides = await page.locator('.apart .side').allInnerTexts();
  expect(sides.map((side) => side.split('\n').filter(Boolean)).sort()).toEqual([
    ['Phone (this device)', expect.any(String), 'Storage box', 'B12'],
    ['Tablet', expect.any(String), 'Storage box', 'Fridge door'],
  ]);
  await shot(phone, 'apart-page');
  await page.goto(`${site.url}#/record/b`);
  await page.locator('.apart .side').nth(1).waitFor();
  await shot(phone, 'apart-record');
  await page.locator('.apart .side', { hasText: 'Tablet' }).tap();
  await page.locator('.apart').waitFor({ state: 'detached' });
  await page.getByText('Fridge door').first().waitFor();

  await bring(tablet, await backupOf(phone));
  await tablet.page.goto(`${site.url}#/record/b`);
  await tablet.page.getByText('Fridge door').first().waitFor();
  expect(await tablet.page.locator('.apart').count()).toBe(0);
  expect(content(await backupOf(tablet))).toBe(content(await backupOf(phone)));
  for (const { complaints } of devices) expect(complaints).toEqual([]);
});
