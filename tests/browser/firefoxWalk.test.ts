import { afterAll, beforeAll, describe, test } from 'vitest';
import type { Driven } from './driven';
import { scaleTypes, thinNewBottle } from './engineWalk';
import { findFirefox } from './findBrowser';
import { openFirefox } from './firefox';
import { newProfile, serve } from './phone';

const binary = findFirefox();

describe.runIf(binary)('in Firefox, with the host gone', () => {
  let site: Awaited<ReturnType<typeof serve>>;
  let firefox: Driven;
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

  test('a new bottle is thinned, the browser is killed in the middle of the drops, and every drop is there again', () =>
    thinNewBottle(firefox, site.url, async () => {
      await firefox.close();
      firefox = await openFirefox(binary!, profile.dir);
      await firefox.go(site.url);
      return firefox;
    }));

  test('a scale that types is read whole at any pace, and what is no weight is refused', () =>
    scaleTypes(firefox, site.url));
});
