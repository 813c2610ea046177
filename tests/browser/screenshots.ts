import { paths } from './audit/paths';
import { settle } from './audit/settle';
import { stroll } from './audit/stroll';
import { newProfile, openPhone, serve } from './phone';

/** The pictures of README, from the made-up demo: `npx vite build && npx tsx tests/browser/screenshots.ts`. */
const wanted: Record<string, string> = {
  'Dilute drops': 'dilute',
  'Layer strips fan': 'layer',
  'Count drops card': 'count',
  'Dose a drink glass.#': 'dose',
  'Make a batch recipe': 'batch',
};

const site = await serve();
const profile = newProfile();
const { page, context } = await openPhone(profile.dir, { home: site.url, height: 780 });

async function shoot(file: string): Promise<void> {
  await page.waitForTimeout(400); // pictures settle
  await page.screenshot({ path: `public/screenshots/${file}.png` });
}

await page.addInitScript('globalThis.__name = (f) => f'); // tsx names the functions that are handed over
await page.goto(`${site.url}#/shelf`);
await page.getByRole('button', { name: 'Look around a made-up workshop' }).tap();
await page.locator('.demo-notice').waitFor({ timeout: 60_000 });
for (const path of paths.filter(({ name }) => Object.keys(wanted).some((here) => here.startsWith(name)))) {
  await page.evaluate((hash) => (location.hash = hash), `#/new/${path.task}`);
  await settle(page);
  const inspect = async (here: string) => {
    if (here === 'Dilute drops') await page.locator('.pad').tap();
    if (here === 'Dose a drink glass.#')
      for (let drops = 1; drops <= 5; drops++) {
        await page.getByRole('button', { name: /^\+ 1 drop/ }).tap();
        await page.waitForTimeout(200); // two touches in one moment count as one
      }
    if (wanted[here]) await shoot(wanted[here]);
  };
  const prefer = [/[Aa]peritif/, path.task === 'layer' ? /CARD|NOOT|RHU/ : /CARD|HEX3|PGF|RHU/, ...(path.prefer ?? [])];
  await stroll(page, { ...path, prefer, types: { ...path.types, aim: '12' } }, { inspect, note: () => {} });
}
await page.evaluate(() => (location.hash = '#/new/calibrate'));
await page.locator('input[name="mass.1"]').fill('0.31');
await settle(page);
await page.getByRole('button', { name: 'Back' }).tap();
await page.emulateMedia({ colorScheme: 'dark' });
await page.locator('.paused').first().waitFor();
await shoot('bench');
await context.close();
await site.stop();
profile.forget();
