import { runKills } from '../browser/kills';

const KILLS = 40;

/** Kills of the whole browser while it writes: what was acknowledged, lost and mended. */
export async function killsBench(): Promise<void> {
  console.log(JSON.stringify({ bench: 'kills', ...(await runKills(KILLS)) }));
}
