import { hand } from '../browser/hand';
import { newProfile, openPhone, serve } from '../browser/phone';
import { walks } from './touchWalks';

/** Taps, keys and drops of each task in this version, beside the first version's and the most that are wanted. */
export async function touchesBench(): Promise<void> {
  const [site, profile] = [await serve(), newProfile()];
  const { page, context } = await openPhone(profile.dir, { home: site.url });
  try {
    await page.addInitScript(countTouches);
    for (const { task, first, wanted, before, go } of walks) {
      const known = { bench: 'touches', task, first, wanted };
      if (!go) console.log(JSON.stringify({ ...known, now: 'no walk yet' }));
      else
        try {
          await page.goto(`${site.url}#/`);
          await page.locator('.tasks .card').first().waitFor();
          await before?.(hand(page), page);
          await page.evaluate(() => sessionStorage.clear());
          await go(hand(page), page);
          const {
            taps = 0,
            keys = 0,
            drops = 0,
          } = await page.evaluate(() => JSON.parse(sessionStorage['touches'] ?? '{}'));
          console.log(JSON.stringify({ ...known, taps, keys, drops }));
        } catch (fault) {
          const at = await page.locator('.say, h1').first().textContent();
          console.log(
            JSON.stringify({ ...known, now: `the walk stopped at “${at}”`, why: String(fault).split('\n')[0] }),
          );
        }
    }
  } finally {
    await context.close();
    await site.stop();
    profile.forget();
  }
}

/** In the page: fingers lifted from what can be touched, keys, and drops apart. No named function: tsx gives those a call the page lacks. */
function countTouches(): void {
  for (const type of ['pointerup', 'keydown'])
    addEventListener(
      type,
      ({ target }) => {
        const hit = (target as Element).closest('a, button, label, input, select, textarea, summary, [role=button]');
        if (type === 'pointerup' && !hit) return;
        const what = type === 'keydown' ? 'keys' : hit!.closest('.pad, .plus') ? 'drops' : 'taps';
        const seen = JSON.parse(sessionStorage['touches'] ?? '{}') as Record<string, number>;
        sessionStorage['touches'] = JSON.stringify({ ...seen, [what]: (seen[what] ?? 0) + 1 });
      },
      true,
    );
}
