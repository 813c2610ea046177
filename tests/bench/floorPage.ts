import { mkdirSync, mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { build } from 'vite';
import { VitePWA } from 'vite-plugin-pwa';

const HTML = `<!doctype html><html lang="en"><meta name="viewport" content="width=device-width"><title>floor</title>
<div id="app"></div><script type="module" src="./main.js"></script></html>`;
const SCRIPT = `import { h, render } from 'preact';
import { signal } from '@preact/signals';
const count = signal(0);
const Page = () => h('main', null, h('div', { class: 'tasks' }, h('button', { class: 'card pad', onPointerDown: () => count.value++ }, h('span', { class: 'count' }, count.value))), h('p', { class: 'data' }, 'data'));
render(h(Page), document.getElementById('app'));
navigator.serviceWorker.register('./sw.js');`;

/** Builds the floor: a bare Preact page with one button that counts, cached by a service worker like the app. Returns its folder. */
export async function buildFloor(): Promise<string> {
  const root = mkdtempSync(join(tmpdir(), 'minim-floor-'));
  mkdirSync(join(root, 'out'));
  writeFileSync(join(root, 'index.html'), HTML);
  writeFileSync(join(root, 'main.js'), SCRIPT);
  await build({
    root,
    base: './',
    configFile: false,
    logLevel: 'error',
    resolve: {
      alias: { preact: resolve('node_modules/preact'), '@preact/signals': resolve('node_modules/@preact/signals') },
    },
    build: { outDir: join(root, 'out'), emptyOutDir: true, target: 'es2022', modulePreload: { polyfill: false } },
    plugins: [VitePWA({ injectRegister: false, workbox: { inlineWorkboxRuntime: true }, manifest: false })],
  });
  return join(root, 'out');
}
