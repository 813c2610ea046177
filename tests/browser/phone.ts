import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium, type BrowserContext, type Page } from 'playwright-core';
import { preview, type PreviewServer } from 'vite';
import { findChromium } from './findBrowser';

/** How long a phone is waited for: far longer than it takes, so that a busy machine fails nothing. */
const PATIENCE_MS = 60_000;

/** Serves dist under a sub-path of a free port of this machine, as any static host would. */
export async function serve(outDir = 'dist'): Promise<{ url: string; stop: () => Promise<void> }> {
  const server: PreviewServer = await preview({
    base: '/bench/',
    build: { outDir },
    preview: { port: 0, host: '127.0.0.1' },
    logLevel: 'error',
  });
  const url = server.resolvedUrls!.local[0]!;
  return { url, stop: () => server.close() };
}

/** A phone: a profile on the disk that outlives the browser, so that one can be killed and another opened on it. */
export function newProfile(): { dir: string; forget: () => void } {
  const dir = mkdtempSync(join(tmpdir(), 'minim-phone-'));
  return { dir, forget: () => rmSync(dir, { recursive: true, force: true, maxRetries: 5 }) };
}

export interface Phone {
  page: Page;
  context: BrowserContext;
  /** Everything that should not have happened: console errors, page errors, requests to other hosts. */
  complaints: string[];
  /** Ends the whole browser at once, as a phone that runs out of power. */
  kill: () => Promise<void>;
}

interface Options {
  width?: number;
  height?: number;
  dark?: boolean;
  /** Language of the phone, as 'de-DE'. */
  locale?: string;
  /** Only requests to this address are fine. */
  home: string;
  /** A film (y4m) that the camera shows, or 'refused' for one that the page may not use; without either there is none. */
  camera?: string;
}

/** Opens a phone-sized Chromium on a profile. */
export async function openPhone(
  dir: string,
  { width = 390, height = 844, dark = false, locale = 'en-US', home, camera }: Options,
): Promise<Phone> {
  const root = process.getuid?.() === 0;
  const context = await chromium.launchPersistentContext(dir, {
    executablePath: findChromium(),
    viewport: { width, height },
    deviceScaleFactor: 2,
    hasTouch: true,
    isMobile: true,
    colorScheme: dark ? 'dark' : 'light',
    locale,
    args: [
      ...(root ? ['--no-sandbox'] : []),
      '--disable-background-networking',
      '--disable-component-update',
      '--disable-sync',
      '--no-first-run',
      ...(camera ? cameraArgs(camera) : []),
    ],
  });
  context.setDefaultTimeout(PATIENCE_MS);
  const complaints: string[] = [];
  const page = context.pages()[0] ?? (await context.newPage());
  page.on(
    'console',
    (message) =>
      ['error', 'warning'].includes(message.type()) && complaints.push(`${message.text()} ${message.location().url}`),
  );
  page.on('pageerror', (error) => complaints.push(String(error)));
  context.on('request', (request) => {
    if (
      !request
        .url()
        .replace(/^blob:/, '')
        .startsWith(new URL(home).origin) &&
      !request.url().startsWith('data:')
    )
      complaints.push(`asked for ${request.url()}`);
  });
  return { page, context, complaints, kill: () => killBrowser(context, dir) };
}

function cameraArgs(camera: string): string[] {
  const there = '--use-fake-device-for-media-stream';
  return camera === 'refused'
    ? [there, '--use-fake-ui-for-media-stream=deny'] // as if "Block" were tapped when the browser asks
    : [there, '--use-fake-ui-for-media-stream', `--use-file-for-fake-video-capture=${camera}`];
}

async function killBrowser(context: BrowserContext, dir: string): Promise<void> {
  const { execFileSync } = await import('node:child_process');
  const gone = new Promise((resolve) => context.once('close', resolve));
  try {
    execFileSync('pkill', ['-9', '-f', `user-data-dir=${dir}`]);
  } catch {
    // pkill answers 1 when nothing was left to kill
  }
  await gone;
}
