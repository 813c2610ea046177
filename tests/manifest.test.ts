import { existsSync, readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { expect, test } from 'vitest';
import { manifest } from '../src/manifest';
import { tasks } from '../src/tasks';

const served = resolve(import.meta.dirname, '../public');

/** Width and height in px of a PNG. Source: PNG specification, IHDR. */
function sizeOf(file: string): string {
  const bytes = readFileSync(file);
  return `${bytes.readUInt32BE(16)}x${bytes.readUInt32BE(20)}`;
}

const pictures = [
  ...manifest.icons!,
  ...(manifest.screenshots ?? []),
  ...manifest.shortcuts!.flatMap(({ icons = [] }) => icons),
];

test.each(pictures.map(({ src, sizes }) => [src, sizes]))('%s is served, %s large', (src, sizes) => {
  const file = resolve(served, src);
  expect(existsSync(file)).toBe(true);
  if (src.endsWith('.png')) expect(sizeOf(file)).toBe(sizes);
  else expect(sizes).toBe('any');
});

test('two copies in two folders of one host are two apps', () => {
  expect(manifest).not.toHaveProperty('id');
  const app = (folder: string) => new URL(manifest.start_url!, `https://host.example/${folder}/`).href;
  expect(app('one')).not.toBe(app('other'));
});

test('each shortcut begins a task that there is, or scans', () => {
  const pages = [...tasks.map(({ id }) => `./#/new/${id}`), './#/scan'];
  for (const { url } of manifest.shortcuts!) expect(pages).toContain(url);
});

test('there are pictures for a phone, an icon of any size and one that the phone colours', () => {
  expect(manifest.screenshots!.map(({ form_factor }) => form_factor)).toContain('narrow');
  expect(manifest.icons!.map(({ purpose = 'any', sizes }) => `${purpose} ${sizes}`)).toEqual(
    expect.arrayContaining(['any any', 'monochrome any', 'maskable 512x512']),
  );
});
