import { setTimeout as sleep } from 'node:timers/promises';
import { openKillable } from './killable';
import { newProfile } from './phone';
import type { StorePage } from './storePage/storePage';

declare const store: StorePage;

/** What came out of killing the browser while it wrote. */
export interface KillFigures {
  kills: number;
  /** Records and events of which the page was told that they are stored. */
  acknowledged: number;
  /** Of these, missing after the next start. */
  lost: number;
  /** Starts at which the browser had thrown its store away, and it came back from the journal. */
  storesRefilled: number;
  /** Starts at which the journal lacked the last writes, and got them. */
  journalsToppedUp: number;
  /** All that was said about mending, each sentence once. */
  said: string[];
}

/** Kills a whole browser at random moments while it writes, and looks after each next start for what is missing. */
export async function runKills({ url, kills }: { url: string; kills: number }): Promise<KillFigures> {
  const profile = newProfile();
  const acknowledged = new Set<string>();
  const lost = new Set<string>();
  const said = new Set<string>();
  let [storesRefilled, journalsToppedUp] = [0, 0];
  for (let k = 0; k <= kills; k++) {
    const { page, kill } = await openKillable(profile.dir);
    let wrote: () => void;
    const firstWrite = new Promise<void>((resolve) => (wrote = resolve));
    await page.exposeFunction('acknowledge', (keys: string[]) => {
      for (const key of keys) acknowledged.add(key);
      wrote();
    });
    await page.goto(url);
    const found = await page.evaluate(async () => {
      await store.opened;
      return { keys: await store.keys(), copies: store.copies() };
    });
    const there = new Set(found.keys);
    for (const key of acknowledged) if (!there.has(key)) lost.add(key);
    if (found.copies.refilled) storesRefilled++;
    else if (found.copies.mended.length > 0) journalsToppedUp++;
    for (const words of found.copies.mended) said.add(words.replace(/\d+/g, 'n'));
    if (k < kills) {
      page
        .evaluate(
          (run) => store.writeOn(run, (globalThis as unknown as { acknowledge: () => void }).acknowledge),
          `run-${k}`,
        )
        .catch(() => {}); // it never ends but by the kill
      await Promise.race([firstWrite, sleep(20_000)]);
      await sleep(Math.random() * 150);
    }
    await kill();
  }
  profile.forget();
  return {
    ...{ kills, acknowledged: acknowledged.size, lost: lost.size, storesRefilled, journalsToppedUp },
    said: [...said],
  };
}
