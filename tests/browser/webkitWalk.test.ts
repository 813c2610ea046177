import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Driven } from './driven';
import { scaleTypes, thinNewBottle } from './engineWalk';
import { newProfile, serve } from './phone';
import { hasWebkit, openWebkit } from './webkit';

describe.runIf(hasWebkit)('in WebKitGTK, with the host gone', () => {
  let site: Awaited<ReturnType<typeof serve>>;
  let webkit: Driven;
  const profile = newProfile();

  beforeAll(async () => {
    site = await serve();
    webkit = await openWebkit(profile.dir);
    await webkit.go(site.url);
    await webkit.see('.tasks', /Dilute/);
    await webkit.see('.keeping-line', /kept once/); // the app itself, not the Bench that is in the page
    await webkit.run('return navigator.serviceWorker.ready.then(() => true)');
    await webkit.go(site.url); // under the worker's control
    await webkit.see('.keeping-line', /kept once/); // the last thing to come: a driver's click does not wait for what moves
    await site.stop();
  });

  afterAll(async () => {
    await webkit.close();
    profile.forget();
  });

  test('a new bottle is thinned, the page is thrown away in the middle of the drops, and every drop is there again', () =>
    thinNewBottle(webkit, site.url, async () => {
      await webkit.go('about:blank');
      await webkit.go(site.url);
      return webkit;
    }));

  test('one copy is kept, since this engine lends workers no file, and the Bench says so', async () => {
    await webkit.go(site.url);
    await webkit.see('.keeping-line', /kept once/);
    expect(await webkit.run('return typeof navigator.storage?.getDirectory')).toBe('undefined');
  });

  test('a scale that types is read whole at any pace, and what is no weight is refused', () =>
    scaleTypes(webkit, site.url));
});
