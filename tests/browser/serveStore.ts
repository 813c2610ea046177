import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { createServer, type IncomingMessage } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { build } from 'vite';

interface Site {
  url: string;
  /** Called with what the page posts. */
  hear: (report: unknown) => void;
  stop: () => void;
}

/** Builds the bare page of the store and serves it from a free port of this machine; takes its reports. */
export async function serveStore(): Promise<Site> {
  const outDir = mkdtempSync(join(tmpdir(), 'minim-store-'));
  const root = resolve(import.meta.dirname, 'storePage');
  const target = { outDir, target: 'es2022', modulePreload: { polyfill: false } } as const;
  await build({ root, base: './', configFile: false, logLevel: 'error', build: target });
  const server = createServer((request, response) => {
    if (request.method === 'POST') {
      void bodyOf(request).then((text) => site.hear(JSON.parse(text)));
      return void response.writeHead(204).end();
    }
    const path = join(outDir, new URL(request.url!, 'http://x').pathname.slice(1) || 'index.html');
    const type = path.endsWith('.js') ? 'text/javascript' : 'text/html';
    if (path.endsWith('blank.html')) response.writeHead(200, { 'content-type': type }).end();
    else if (existsSync(path)) response.writeHead(200, { 'content-type': type }).end(readFileSync(path));
    else response.writeHead(404).end();
  });
  await new Promise<void>((listening) => server.listen(0, '127.0.0.1', listening));
  const site: Site = {
    url: `http://127.0.0.1:${(server.address() as AddressInfo).port}/`,
    hear: () => {},
    stop() {
      server.closeAllConnections();
      server.close();
      rmSync(outDir, { recursive: true, force: true });
    },
  };
  return site;
}

async function bodyOf(request: IncomingMessage): Promise<string> {
  const parts: Buffer[] = [];
  for await (const part of request) parts.push(part as Buffer);
  return Buffer.concat(parts).toString();
}
