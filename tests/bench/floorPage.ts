import { mkdirSync, mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { build } from 'vite';
import { VitePWA } from 'vite-plugin-pwa';

const HTML = `<!doctype html><html lang="en"><meta name="viewport" content="width=device-width"><title>floor</title>
<div id="app"></div><script type="module" src="./main.js"></script></html>`;

/** The store with the names, keys and indexes of the app's. */
const STORE = `export const opened = new Promise((resolve, reject) => {
  const asked = indexedDB.open('minim', 2);
  asked.onupgradeneeded = () => {
    const records = asked.result.createObjectStore('records', { keyPath: 'id' });
    for (const [name, path] of [['kind', 'kind'], ['open', 'open'], ['ended', ['endedAt', 'id']], ['discarded', ['discarded', 'id']]]) records.createIndex(name, path);
    asked.result.createObjectStore('events', { keyPath: ['run', 'seq'] });
    asked.result.createObjectStore('meta');
  };
  asked.onsuccess = () => resolve(asked.result);
  asked.onerror = () => reject(asked.error);
});
export const answer = (request) => new Promise((resolve, reject) => {
  request.onsuccess = () => resolve(request.result);
  request.onerror = () => reject(request.error);
});
export async function keep(event) {
  const work = (await opened).transaction(['records', 'events', 'meta'], 'readwrite', { durability: 'strict' });
  const state = await answer(work.objectStore('meta').get('state'));
  work.objectStore('events').put(event);
  work.objectStore('meta').put({ ...state, n: (state?.n ?? 0) + 1 }, 'state');
  await new Promise((resolve, reject) => Object.assign(work, { oncomplete: resolve, onabort: () => reject(work.error) }));
}`;

/** Both copies, one after the other, each flushed to the disk. */
const WORKER = `import { keep } from './store.js';
const file = (async () => {
  const folder = await navigator.storage.getDirectory();
  return (await folder.getFileHandle('floor.jsonl', { create: true })).createSyncAccessHandle();
})();
const encoder = new TextEncoder();
onmessage = async ({ data }) => {
  await keep(data);
  const handle = await file;
  handle.write(encoder.encode(JSON.stringify(data) + '\\n'), { at: handle.getSize() });
  handle.flush();
  postMessage(data.seq);
};`;

const keepIn: Readonly<Record<Copies, string>> = {
  'two copies': `const worker = new Worker(new URL('./worker.js', import.meta.url), { type: 'module' });
worker.onmessage = () => count.value++;
const store = (event) => worker.postMessage(event);`,
  'one copy': `const store = async (event) => { await keep(event); count.value++; };`,
};

const script = (copies: Copies) => `import { h, render } from 'preact';
import { signal } from '@preact/signals';
import { answer, keep, opened } from './store.js';
const count = signal(0);
const data = signal('');
${keepIn[copies]}
let seq = Date.now();
const tap = () => store({ run: 'floor', seq: seq++, at: new Date().toISOString(), type: 'drop', key: 'pad' });
const Page = () => h('main', null, h('div', { class: 'tasks' }, h('button', { class: 'card pad', onPointerDown: tap }, h('span', { class: 'count' }, count.value))), data.value && h('p', { class: 'data' }, data.value));
render(h(Page), document.getElementById('app'));
const db = await opened;
const reading = db.transaction(['records', 'meta']);
const records = reading.objectStore('records');
const [, paused] = await Promise.all([answer(reading.objectStore('meta').get('state')), answer(records.index('open').getAll()), answer(records.index('kind').getAll('settings'))]);
data.value = paused.map(({ title }) => title).join() || 'none';
await answer(db.transaction('records').objectStore('records').index('kind').getAll('vial'));
navigator.serviceWorker.register('./sw.js');`;

/** How often the bare page keeps a tap: once in the store, or in a file beside it too, as the app does. */
export type Copies = 'one copy' | 'two copies';

/**
 * Builds the floor: a bare Preact page with one button that counts, cached by a service worker like the app. It reads the same store
 * as the app does at its start, and a tap is counted when it is stored. Returns its folder.
 */
export async function buildFloor(copies: Copies): Promise<string> {
  const root = mkdtempSync(join(tmpdir(), 'minim-floor-'));
  mkdirSync(join(root, 'out'));
  const files = { 'index.html': HTML, 'main.js': script(copies), 'store.js': STORE, 'worker.js': WORKER };
  for (const [name, text] of Object.entries(files)) writeFileSync(join(root, name), text);
  await build({
    root,
    base: './',
    configFile: false,
    logLevel: 'error',
    resolve: {
      alias: { preact: resolve('node_modules/preact'), '@preact/signals': resolve('node_modules/@preact/signals') },
    },
    worker: { format: 'es' },
    build: { outDir: join(root, 'out'), emptyOutDir: true, target: 'es2022', modulePreload: { polyfill: false } },
    plugins: [VitePWA({ injectRegister: false, workbox: { inlineWorkboxRuntime: true }, manifest: false })],
  });
  return join(root, 'out');
}
