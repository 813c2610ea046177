import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { findFirefox } from './findBrowser';
import { openFirefox, type Firefox } from './firefox';
import { newProfile, serve } from './phone';

const binary = findFirefox();

describe.runIf(binary)('in Firefox, with the host gone', () => {
  let site: Awaited<ReturnType<typeof serve>>;
  let firefox: Firefox;
  const profile = newProfile();

  beforeAll(async () => {
    site = await serve();
    firefox = await openFirefox(binary!, profile.dir);
    await firefox.go(site.url);
    await firefox.see('.tasks', /Dilute/);
    await firefox.run('return navigator.serviceWorker.ready.then(() => true)');
    await firefox.go('about:blank');
    await site.stop();
    await firefox.go(site.url);
  });

  afterAll(async () => {
    await firefox.close();
    profile.forget();
  });

  test('a new bottle is thinned, the browser is killed in the middle of the drops, and every drop is there again', async () => {
    await firefox.click('.tasks .card', 'Dilute');
    await firefox.click('label.choice', 'A new bottle');
    await firefox.type('input[name="new.name"]', 'cardamom oil');
    await firefox.type('input[name="new.code"]', 'CARD');
    await firefox.click('.actions .main');
    await firefox.see('.say', /label say/);
    await firefox.click('.actions .main');
    await firefox.click('label.choice', 'Food grade');
    await firefox.see('.say', /How strong/);
    await firefox.click('.actions .main');
    for (const [words, next] of [
      ['10 mL', /Which solvent/],
      ['ethanol 96', /food grade/],
      ['Food grade', /measure the solvent/],
      ['Syringe', /measure the material/],
      ['By drops', /Which dropper/],
      ['not weighed', /drops of cardamom/],
    ] as const) {
      await firefox.click('label.choice', words);
      await firefox.see('.say', next);
    }
    await firefox.click('.actions .main');
    await firefox.see('.say', /into the vial/);
    await firefox.click('.actions .main');
    for (let i = 1; i <= 3; i++) {
      await firefox.click('.pad');
      await firefox.see('.pad .count', new RegExp(`^${i}$`));
    }
    await firefox.close();

    firefox = await openFirefox(binary!, profile.dir);
    await firefox.go(site.url);
    await firefox.see('.paused', /drop 3 of/);
    await firefox.click('.paused .main');
    await firefox.see('.pad .count', /^3$/);
    await firefox.click('.pad');
    await firefox.see('.pad .count', /^4$/);
    await firefox.click('.actions .main');
    await firefox.see('.say', /It is|It came out/);
    await firefox.click('.actions .main');
    await firefox.see('.say', /label/);
    await firefox.click('.actions .main');
    await firefox.see('.record', /cardamom oil/);
    expect(
      await firefox.run<string[]>('return performance.getEntriesByType("resource").map((r) => new URL(r.name).host)'),
    ).toSatisfy((hosts: string[]) => hosts.every((host) => host === new URL(site.url).host));
  });
});
