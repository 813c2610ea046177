import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { build, type Plugin } from 'vite';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { intakes } from '../../src/tables/adi';
import { limitsEu } from '../../src/tables/limitsEu';
import { limitsUs } from '../../src/tables/limitsUs';
import { abvTerms } from '../../src/tables/abvTerms';
import { constituents } from '../../src/tables/constituents';
import { oils } from '../../src/tables/catalogue/oils';
import { substances } from '../../src/tables/catalogue/substances';
import { solvents } from '../../src/tables/solvents';
import { acids } from '../../src/tables/syrupAdditives';
import { hasWords } from '../../src/words/texts';
import { allWords } from '../../src/words/translation';
import { inBrackets } from '../words/inBrackets';
import { everyRecord, pagesOf } from './audit/pages';
import { paths } from './audit/paths';
import { settle } from './audit/settle';
import { stroll } from './audit/stroll';
import { newProfile, openPhone, serve, type Phone } from './phone';
import { outsideBrackets } from './outsideBrackets';

const folder = mkdtempSync(join(tmpdir(), 'minim-words-'));
let site: Awaited<ReturnType<typeof serve>>;
let profile: ReturnType<typeof newProfile>;
let phone: Phone;

beforeAll(async () => {
  const file = join(folder, 'xx.json');
  const { written, data } = allWords();
  writeFileSync(file, JSON.stringify(inBrackets([...written, ...data])));
  process.env['MINIM_WORDS'] = file;
  const { default: config } = await import('../../vite.config');
  const plugins = (config.plugins as (Plugin | Plugin[])[])
    .flat()
    .filter(({ name }) => !name.startsWith('vite-plugin-pwa'));
  const outDir = join(folder, 'dist');
  await build({
    ...config,
    configFile: false,
    plugins,
    logLevel: 'error',
    build: { ...config.build, outDir, minify: false },
  });
  site = await serve(outDir);
  profile = newProfile();
  phone = await openPhone(profile.dir, { home: site.url });
  await phone.page.goto(site.url);
});

afterAll(async () => {
  await phone.context.close();
  await site.stop();
  profile.forget();
  rmSync(folder, { recursive: true });
});

const found = new Map<string, string>();

async function look(name: string): Promise<void> {
  for (const text of await phone.page.evaluate(outsideBrackets)) if (!found.has(text)) found.set(text, name);
}

async function goTo(hash: string): Promise<void> {
  await phone.page.evaluate((hash) => (location.hash = hash), hash);
  await settle(phone.page);
}

/** Pages and runs that bring up every kind of text; the audit sees all of them in English. */
const SEEN =
  /^(Bench|Shelf|Book|Settings|Keeping|Two devices|Labels|Sheet of a batch|record (vial|bottle|batch|calibration|layering|tasting) |record vial (how.0|edit|trace))$/;
const WALKED =
  /^(Dilute|Calibrate drops|Layer strips|Count drops|Dose a drink|Make a batch|Blind test: Triangle|Look up ppm)$/;
const STEPS = 7;

/** What stays as it is: names in tables, and what the walk types. */
const named = [
  ...[...solvents, ...acids, ...oils, ...substances].map(({ name }) => name),
  ...constituents.map(({ name }) => name),
  ...[...limitsEu, ...limitsUs, ...intakes].flatMap(({ what, source }) => [what, source]),
  ...abvTerms.map(({ term }) => term),
  'made up',
  'first lot',
  'second lot',
  'sour',
  'middle of 0.8505–0.8585 g/mL, the limits of a withdrawn edition of the standard', // how the catalogue read a density
];

/** Texts of a record that a person wrote. */
function ownWords(record: unknown): string[] {
  if (typeof record !== 'object' || record === null) return [];
  return Object.entries(record).flatMap(([key, value]) =>
    typeof value === 'string' && /^(name|supplier|lot|box|words|notes|botanical|tip|verdict)$/.test(key)
      ? [value]
      : ownWords(value),
  );
}

function capital(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}

/** As the browser writes it, in its own language: 'Oct 2, 2026', and over the pages of the Book 'Friday, October 2'. */
const DAY = /[A-Z][a-z]{2} \d{1,2}, \d{4}|[A-Z][a-z]+day, [A-Z][a-z]+ \d{1,2}(, \d{4})?/g;

/** Whether words are left in a text when names, codes, numbers and units are taken out. */
function untranslated(text: string, names: readonly string[]): boolean {
  const cut = /^(.{4,})…$/.exec(text.trim())?.[1];
  if (cut && names.some((name) => name.includes(cut))) return false;
  const rest = names.reduce((left, name) => left.replaceAll(name, ' ').replaceAll(capital(name), ' '), text);
  return hasWords(rest.replace(DAY, ' ').replace(/(?<!\p{L})(?!FIT|SMELL)[\p{Lu}\d-]+(?!\p{L})/gu, ' '));
}

test('a translation leaves nothing in English but data', async () => {
  const { page } = phone;
  const html = readFileSync(join(folder, 'dist/index.html'), 'utf8'); // it comes with the Bench in it
  expect(html).toContain('<html lang="xx">');
  expect(html).toContain('<h1>⟦Bench⟧</h1>');
  await page.locator('.tasks .card').first().waitFor();
  await look('Bench, empty');
  await goTo('#/shelf');
  await look('Shelf, empty');
  await page.getByRole('button', { name: 'Look around a made-up workshop' }).tap();
  await page.getByText('T1').first().waitFor();
  for (const [name, hash] of (await pagesOf(page)).filter(([name]) => SEEN.test(name))) {
    await goTo(hash);
    await look(name);
  }
  for (const path of paths.filter(({ name }) => WALKED.test(name))) {
    await goTo(`#/new/${path.task}`);
    await stroll(page, { ...path, steps: STEPS, ends: false }, { inspect: look, note: () => undefined });
  }
  const written = (await everyRecord(page)).flatMap(ownWords).filter((words) => words.length > 2);
  const names = [...new Set([...named, ...written])].sort((a, b) => b.length - a.length);
  const left = [...found].filter(([text]) => untranslated(text, names)).map(([text, name]) => `${name}: ${text}`);
  expect(left).toEqual([]);
  expect(found.size).toBeGreaterThan(300);
  expect(phone.complaints).toEqual([]);
});
