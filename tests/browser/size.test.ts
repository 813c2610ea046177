import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { gzipSync } from 'node:zlib';
import { expect, test } from 'vitest';
import { backupSchema } from '../../src/records/backup/backupSchema';

const dist = resolve(import.meta.dirname, '../../dist');
const KB = 1000;

/** The scripts that the page needs before it can be used: its own, and what they import at once. */
function firstLoad(): string[] {
  const html = readFileSync(join(dist, 'index.html'), 'utf8');
  const found = new Set([...html.matchAll(/(?:src|href)="\.\/(assets\/[^"]+\.js)"/g)].map((match) => match[1]!));
  for (const file of found)
    for (const match of readFileSync(join(dist, file), 'utf8').matchAll(
      /(?:^|[;}])import\s*(?:[\w$*{][^'"();]*from)?\s*["']\.\/([^"']+\.js)["']/g,
    ))
      found.add(`assets/${match[1]}`);
  return [...found];
}

test('the first load is at most 60 kB of script, gzipped', () => {
  const files = firstLoad();
  const sizes = files.map((file) => gzipSync(readFileSync(join(dist, file)), { level: 9 }).length / KB);
  const total = sizes.reduce((sum, size) => sum + size, 0);
  console.info(`first load: ${total.toFixed(1)} kB in ${files.length} scripts`);
  expect(files.length).toBeGreaterThan(0);
  expect(total).toBeLessThanOrEqual(60);
});

test('the shape of a backup is published beside the app', () => {
  expect(JSON.parse(readFileSync(join(dist, 'backup.schema.json'), 'utf8'))).toEqual(backupSchema());
});

test('every script, style, font and picture that the app may need is in the precache', () => {
  const worker = readFileSync(join(dist, 'sw.js'), 'utf8');
  const needed = readdirSync(join(dist, 'assets')).filter((file) => /\.(js|css|woff2|wasm|json)$/.test(file));
  expect(needed.filter((file) => !worker.includes(`assets/${file}`))).toEqual([]);
});
