import { spawn } from 'node:child_process';
import { findChromium } from './findBrowser';

/**
 * Opens an address in a headless Chromium of its own process group, without anything that drives it.
 * Gives what ends every process of it at once (SIGKILL), as a phone that runs out of power or of memory.
 */
export function openKillable(dir: string, url: string): () => Promise<void> {
  const browser = spawn(
    findChromium(),
    [
      '--headless=new',
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
      url,
    ],
    { stdio: 'ignore', detached: true },
  );
  const gone = new Promise<void>((resolve) => browser.once('exit', () => resolve()));
  return () => {
    process.kill(-browser.pid!, 'SIGKILL');
    return gone;
  };
}
