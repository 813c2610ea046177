import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { build, preview } from 'vite';

/** Builds the bare page of the store and serves it from a free port of this machine. */
export async function serveStore(): Promise<{ url: string; stop: () => Promise<void> }> {
  const outDir = mkdtempSync(join(tmpdir(), 'minim-store-'));
  const root = resolve(import.meta.dirname, 'storePage');
  const common = { root, base: './', configFile: false, logLevel: 'error' } as const;
  await build({ ...common, build: { outDir, target: 'es2022', modulePreload: { polyfill: false } } });
  const server = await preview({ ...common, build: { outDir }, preview: { port: 0, host: '127.0.0.1' } });
  const stop = async () => {
    await server.close();
    rmSync(outDir, { recursive: true, force: true });
  };
  return { url: server.resolvedUrls!.local[0]!, stop };
}
