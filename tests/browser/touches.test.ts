import { readFileSync } from 'node:fs';
import { afterAll, beforeAll, expect, onTestFailed, test } from 'vitest';
import { newProfile, openPhone, serve, type Phone } from './phone';
import { countOn, walked } from './touches';
import { touchWalks, type TouchWalk } from './touchWalks';

let site: Awaited<ReturnType<typeof serve>>;
let profile: ReturnType<typeof newProfile>;
let phone: Phone;

beforeAll(async () => {
  site = await serve();
  profile = newProfile();
  phone = await openPhone(profile.dir, { home: site.url });
  await countOn(phone.page);
});

afterAll(async () => {
  await phone.context.close();
  await site.stop();
  profile.forget();
});

// One after the other, on what the ones before have left, as a day goes.
test.each(touchWalks.map((walk) => [limitOf(walk), walk] as const))('%s', async (_, walk) => {
  onTestFailed(async () => void (await phone.page.screenshot({ path: `tests/output/touches ${walk.task}.png` })));
  const { taps, keys, drops, touched } = await walked(phone.page, site.url, walk);
  expect(taps, touched.join(' | ')).toBeLessThanOrEqual(walk.most.taps);
  expect(taps).toBe(touched.length);
  expect(taps).toBeGreaterThan(0); // they were counted
  expect(keys).toBeLessThanOrEqual(walk.most.keys);
  if (walk.stated) expect([taps + drops, keys, drops]).toEqual(stated(walk.stated));
  expect(phone.complaints).toEqual([]);
});

function limitOf({ task, most: { taps, keys } }: TouchWalk): string {
  return `${task} takes at most ${taps} taps and ${keys} keys, drops apart`;
}

/** Taps, keys and drops as README.md states them after these words; the drops are among the taps. */
function stated(words: string): number[] {
  const [sentence] = new RegExp(`${words}[^.]*`).exec(readFileSync('README.md', 'utf8'))!;
  return ['taps', 'keys', 'drops'].map((what) => Number(new RegExp(`(\\d+) ${what}`).exec(sentence!)![1]));
}
