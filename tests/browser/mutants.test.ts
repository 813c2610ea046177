import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test, vi } from 'vitest';
import { fileOf, mutantsOf, type Mutant } from '../app/fault/mutants';
import { wholeBackup } from '../app/fault/wholeBackup';
import { newProfile, openPhone, serve, type Phone } from './phone';

vi.mock('idb', () => import('../app/fault/memoryDb')); // the backup is made here, not in the browser

const COUNT = Number(process.env['MUTANTS'] ?? 4); // `npm run bench -- hold` tries 200
const LISTS = ['', 'shelf', 'shelf/due', 'shelf/shopping', 'shelf/archived', 'book', 'labels', 'keeping', 'settings'];
const TASKS = ['dilute', 'calibrate', 'layer', 'count', 'dose', 'batch', 'blind', 'lookup', 'bottle', 'supply', 'certificate', 'proportions', 'formula']; // prettier-ignore
const PAGES = ['', '/paper', '/trace', '/again', '/edit', '/weigh', '/mark'];

let site: Awaited<ReturnType<typeof serve>>;
let profile: ReturnType<typeof newProfile>;
let phone: Phone;

beforeAll(async () => {
  site = await serve();
  profile = newProfile();
  phone = await openPhone(profile.dir, { home: site.url });
});
afterAll(async () => {
  await phone.context.close();
  await site.stop();
  profile.forget();
});

/** Restores a file in place of everything, by hand. */
async function restore(page: Page, path: string): Promise<void> {
  await page.goto(`${site.url}#/keeping`);
  await page.locator('input[name=backup]').setInputFiles(path);
  const instead = page.locator('label.choice', { hasText: 'Instead of what is here' });
  await instead.waitFor();
  await instead.tap();
  await page.getByRole('button', { name: 'Restore' }).tap();
  await page.getByText('Restored. Both copies').waitFor();
}

/** Goes through addresses in the page itself, and hands back those at which something broke or nothing came. */
function wrongAt(hashes: readonly string[]): Promise<string[]> {
  const broken =
    /entry cannot be shown|could not show|went wrong|could not work out|could not be worked out|could not be fetched|NaN|Invalid Date/;
  const isThere = () => {
    const main = document.querySelector('main');
    return main !== null && main.innerText.trim().length > 4 && !document.querySelector('[aria-busy=true]');
  };
  const look = async (hash: string) => {
    location.hash = `#/${hash}`;
    const until = performance.now() + 30_000;
    do await new Promise((done) => setTimeout(done, 20));
    while (!isThere() && performance.now() < until);
    if (!isThere()) return [`${hash}: blank`];
    const main = document.querySelector('main')!.innerText;
    const odd = main.includes('Minim cannot read this entry') ? null : broken.exec(main);
    return odd ? [`${hash}: ${main.slice(Math.max(0, odd.index - 40), odd.index + 80)}`] : [];
  };
  return hashes.reduce<Promise<string[]>>(
    async (all, hash) => [...(await all), ...(await look(hash))],
    Promise.resolve([]),
  );
}

/** What is drawn of a mutant: every list and first step, every page of what was changed, and the page of everything else. */
function addressesOf({ content: { records }, changed }: Mutant): string[] {
  const there = records.map(({ id }) => String(id)).filter((id) => id !== '' && id.length < 100);
  return [
    ...LISTS,
    ...there.map((id) => `record/${encodeURIComponent(id)}`),
    ...changed.filter((id) => there.includes(id)).flatMap((id) => PAGES.map((page) => `record/${id}${page}`)),
    ...TASKS.map((task) => `new/${task}`),
  ];
}

test(
  `${COUNT} backups with something wrong in them, restored by hand, blank no page`,
  { timeout: 6 * 3_600_000 },
  async () => {
    const { page } = phone;
    await page.goto(site.url);
    const next = mutantsOf(await wholeBackup(), 33);
    const wrong: string[] = [];
    for (let i = 0; i < COUNT; i++) {
      const mutant = next();
      const path = join(profile.dir, 'mutant.json');
      writeFileSync(path, fileOf(mutant.content));
      await restore(page, path);
      const found = await page.evaluate(wrongAt, addressesOf(mutant));
      const errors = phone.complaints.splice(0);
      wrong.push(...[...found, ...errors].map((what) => `${what} — mutant ${i}: ${mutant.deeds.join('; ')}`));
    }
    expect(wrong).toEqual([]);
  },
);
