import { newProfile, openPhone, serve } from '../browser/phone';
import { countOn, walked } from '../browser/touches';
import { touchWalks } from '../browser/touchWalks';

/** Taps, keys and drops of each task in this version, beside the first version's taps and the most that it may take. */
export async function touchesBench(): Promise<void> {
  const [site, profile] = [await serve(), newProfile()];
  const { page, context } = await openPhone(profile.dir, { home: site.url });
  try {
    await countOn(page);
    for (const walk of touchWalks) {
      const { task, first = null, most } = walk;
      const { taps, keys, drops } = await walked(page, site.url, walk);
      console.log(JSON.stringify({ bench: 'touches', task, first, most, taps, keys, drops }));
    }
  } finally {
    await context.close();
    await site.stop();
    profile.forget();
  }
}
