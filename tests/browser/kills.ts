import { setTimeout as sleep } from 'node:timers/promises';
import { openKillable } from './killable';
import { newProfile } from './phone';
import { serveStore } from './serveStore';
import type { Report } from './storePage/storePage';

/** What came out of killing the browser while it wrote. */
export interface KillFigures {
  kills: number;
  /** Records and events of which the page was told that they are stored. */
  acknowledged: number;
  /** Of these, missing after a next start. */
  lost: number;
  /** Starts at which the browser had thrown its store away, and it came back from the journal. */
  storesRefilled: number;
  /** Starts at which the journal lacked the last writes, and got them. */
  journalsToppedUp: number;
  /** All that was said about mending, each sentence once. */
  said: string[];
}

/** Kills a whole browser at random moments while it writes, and looks after each next start for what is missing. */
export async function runKills(kills: number): Promise<KillFigures> {
  const site = await serveStore();
  const profile = newProfile();
  const acknowledged = new Set<string>();
  const figures: KillFigures = { kills, acknowledged: 0, lost: 0, storesRefilled: 0, journalsToppedUp: 0, said: [] };
  const lost = new Set<string>();
  for (let k = 0; k <= kills; k++) {
    let tell: Record<'opened' | 'wrote', () => void>;
    const told = new Promise<void>((opened) => (tell = { opened, wrote: () => {} }));
    const wrote = new Promise<void>((resolve) => (tell.wrote = resolve));
    site.hear = (report) => {
      const { keys, copies } = report as Report;
      if (!copies) {
        for (const key of keys) acknowledged.add(key);
        return tell.wrote();
      }
      const there = new Set(keys);
      for (const key of acknowledged) if (!there.has(key)) lost.add(key);
      if (copies.refilled) figures.storesRefilled++;
      else if (copies.mended.length > 0) figures.journalsToppedUp++;
      figures.said = [...new Set([...figures.said, ...copies.mended.map((words) => words.replace(/\d+/g, 'n'))])];
      tell.opened();
    };
    const kill = openKillable(profile.dir, `${site.url}?run=${k}`);
    await inTime(told, 'the store did not open');
    if (k < kills) await inTime(wrote, 'nothing was written');
    if (k < kills) await sleep(Math.random() * 120);
    await kill();
    await sleep(40); // its last processes let go of the profile
  }
  site.stop();
  profile.forget();
  return { ...figures, acknowledged: acknowledged.size, lost: lost.size };
}

async function inTime(work: Promise<void>, complaint: string): Promise<void> {
  const late = new AbortController();
  const out = sleep(60_000, null, { signal: late.signal }).then(() => Promise.reject(new Error(complaint)));
  await Promise.race([work, out.catch((error: unknown) => (late.signal.aborted ? null : Promise.reject(error)))]);
  late.abort();
}
