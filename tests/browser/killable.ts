import { spawn } from 'node:child_process';
import { existsSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { chromium, type Page } from 'playwright-core';
import { findChromium } from './findBrowser';

/** A browser of this test's own process group, so that all of it can be killed at any moment without a word. */
export interface Killable {
  page: Page;
  /** Ends every process of it at once (SIGKILL), as a phone that runs out of power, or of memory. */
  kill: () => Promise<void>;
}

/** Opens a headless Chromium on a profile. */
export async function openKillable(dir: string): Promise<Killable> {
  const portFile = join(dir, 'DevToolsActivePort');
  rmSync(portFile, { force: true });
  const browser = spawn(
    findChromium(),
    [
      '--headless=new',
      '--remote-debugging-port=0',
      `--user-data-dir=${dir}`,
      '--no-first-run',
      '--no-default-browser-check',
      '--disable-background-networking',
      '--disable-component-update',
      '--disable-sync',
      '--disable-gpu',
      '--disable-extensions',
      '--mute-audio',
      ...(process.getuid?.() === 0 ? ['--no-sandbox'] : []),
      'about:blank',
    ],
    { stdio: 'ignore', detached: true },
  );
  const gone = new Promise<void>((resolve) => browser.once('exit', () => resolve()));
  for (let waited = 0; !existsSync(portFile) || !readFileSync(portFile, 'utf8').includes('\n'); waited += 10) {
    if (waited > 20_000) throw new Error('Chromium did not start');
    await sleep(10);
  }
  const port = readFileSync(portFile, 'utf8').split('\n')[0];
  const connection = await chromium.connectOverCDP(`http://127.0.0.1:${port}`);
  const context = connection.contexts()[0]!;
  const page = context.pages()[0] ?? (await context.newPage());
  return {
    page,
    async kill() {
      process.kill(-browser.pid!, 'SIGKILL');
      await gone;
      await connection.close().catch(() => {});
      await sleep(30); // the last child processes let go of the profile
    },
  };
}
