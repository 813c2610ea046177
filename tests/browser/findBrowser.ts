import { execFileSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { chromium } from 'playwright-core';

const INSTALLED = [
  '/usr/bin/chromium-headless-shell', // the same engine without a window: starts in half the time
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/usr/bin/google-chrome-stable',
  '/usr/bin/microsoft-edge',
  '/snap/bin/chromium',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  '/Applications/Microsoft Edge.app/Contents/MacOS/Microsoft Edge',
  ...['PROGRAMFILES', 'PROGRAMFILES(X86)', 'LOCALAPPDATA'].flatMap((name) =>
    process.env[name]
      ? [
          `${process.env[name]}/Google/Chrome/Application/chrome.exe`,
          `${process.env[name]}/Microsoft/Edge/Application/msedge.exe`,
        ]
      : [],
  ),
];

/**
 * Path of a Chromium for the tests: the variable CHROME_BIN, else an installed Chromium, Chrome or Edge, else one that is
 * installed now (as root on Debian with apt, elsewhere with Playwright's own installer). Fails loudly; browser tests are never skipped.
 */
export function findChromium(): string {
  const asked = process.env['CHROME_BIN'];
  if (asked) {
    if (!existsSync(asked)) throw new Error(`CHROME_BIN=${asked} does not exist`);
    return asked;
  }
  const there = () => [...INSTALLED, chromium.executablePath()].find((path) => path && existsSync(path));
  const found = there() ?? (install(), there());
  if (!found) throw new Error('No Chromium found. Install Chromium, Chrome or Edge, or set CHROME_BIN to one.');
  return found;
}

function install(): void {
  const debian = existsSync('/etc/os-release') && /debian|ubuntu/i.test(readFileSync('/etc/os-release', 'utf8'));
  const quiet = { stdio: ['ignore', 'ignore', 'inherit'] as ['ignore', 'ignore', 'inherit'] };
  try {
    if (debian && process.getuid?.() === 0) {
      execFileSync('apt-get', ['update', '-qq'], quiet);
      execFileSync('apt-get', ['install', '-y', '-qq', '--no-install-recommends', 'chromium-headless-shell'], quiet);
    } else
      execFileSync('npx', ['playwright-core', 'install', 'chromium', '--only-shell'], {
        ...quiet,
        shell: process.platform === 'win32',
      });
  } catch (error) {
    console.error(error instanceof Error ? error.message : error);
  }
}

/** Path of a Firefox, or null: the Firefox walk runs where one is installed. */
export function findFirefox(): string | null {
  const asked = process.env['FIREFOX_BIN'];
  const places = ['/usr/bin/firefox-esr', '/usr/bin/firefox', '/Applications/Firefox.app/Contents/MacOS/firefox'];
  return asked ?? places.find((path) => existsSync(path)) ?? null;
}
