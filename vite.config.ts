import { runnerImport, type HtmlTagDescriptor, type Plugin } from 'vite';
import { VitePWA } from 'vite-plugin-pwa';
import { defineConfig } from 'vitest/config';
import { manifest } from './src/manifest.ts';
import * as icons from './src/ui/drawn/firstIcons.ts';
import { iconHtml } from './src/ui/drawn/iconHtml.ts';
import { inWords, languageOf, translation } from './src/words/translation.ts';

/** A translation, as src/words/list.ts prints it to be filled in: the language to build in. */
const words = process.env['MINIM_WORDS'];
const otherWords = translation(words);

const pwa = VitePWA({
  registerType: 'prompt',
  injectRegister: false, // src/app/nav/update.tsx registers it: the plugin's helper breaks under Trusted Types
  workbox: {
    globPatterns: ['**/*.{html,js,css,svg,png,woff2,json,webmanifest,wasm}'],
    globIgnores: ['screenshots/**'],
    inlineWorkboxRuntime: true,
    cleanupOutdatedCaches: true,
    navigateFallback: null, // below the scope there is one page; what else is asked for there leads to it
    runtimeCaching: [
      {
        urlPattern: ({ request }) => request.mode === 'navigate',
        handler: async () => Response.redirect(new URL('./', self.location.href).href),
      },
    ],
    clientsClaim: true, // the page that was there first is served from the cache, too, as soon as all is in it
  },
  manifest: { ...inWords(manifest, words), lang: languageOf(words) },
});

/** What the page may do, in the page itself: it holds on a host that sends no headers. Only in the build: the dev server needs more. */
const policy = [
  "default-src 'none'",
  "script-src 'self' 'wasm-unsafe-eval'", // the reader of label codes is WebAssembly
  "style-src 'self'",
  "img-src 'self' data: blob:",
  "font-src 'self'",
  "connect-src 'self'",
  'media-src blob:', // silence for the buttons of headphones: src/ui/mediaKeys.ts
  "worker-src 'self'",
  "manifest-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
  "require-trusted-types-for 'script'",
  'trusted-types minim-worker', // src/app/nav/scriptUrl.ts
].join('; ');
/** The Bench as it stands before any script runs; the app takes its elements over. */
const bench: Plugin = {
  name: 'bench',
  transformIndexHtml: {
    order: 'post',
    handler: async (html, { bundle }) => ({
      html: html.replace('<div id="app"></div>', `<div id="app">${await benchHtml()}</div>`),
      tags: [...fontTags(Object.keys(bundle ?? {})), { tag: 'script', attrs: { src: './boot.js' }, injectTo: 'head' }],
    }),
  },
};

/** The letters of the Bench come before it is painted, so that it is laid out once. */
function fontTags(files: readonly string[]): HtmlTagDescriptor[] {
  const fonts = files.filter((name) => /next-latin-[47]00-.*\.woff2$/.test(name));
  return fonts.map((name) => ({
    tag: 'link',
    attrs: { rel: 'preload', as: 'font', type: 'font/woff2', crossorigin: '', href: `./${name}` },
    injectTo: 'head',
  }));
}

/** The shape of a backup, published beside the app. */
const schema: Plugin = {
  name: 'backup-schema',
  apply: 'build',
  async generateBundle() {
    const file = './src/records/backup/backupSchema.ts';
    const { backupSchema } = (await runnerImport<typeof import('./src/records/backup/backupSchema.ts')>(file)).module;
    this.emitFile({
      type: 'asset',
      fileName: 'backup.schema.json',
      source: `${JSON.stringify(backupSchema(), null, 1)}\n`,
    });
  },
};

async function benchHtml(): Promise<string> {
  const { tasks } = (await runnerImport<typeof import('./src/tasks/index.ts')>('./src/tasks/index.ts')).module;
  const [bench, shelf, book] = inWords(['Bench', 'Shelf', 'Book'] as const, words);
  const cards = inWords(tasks, words).map(
    ({ id, icon, name, hint }) =>
      `<a class="card" href="#/new/${id}">${iconHtml(icon)}<b>${name}</b><span>${hint}</span></a>`,
  );
  const tabs = [
    `<a href="#/" aria-current="page">${iconHtml(icons.bench)}${bench}</a>`,
    `<a href="#/shelf">${iconHtml(icons.shelf)}${shelf}</a>`,
    `<a href="#/book">${iconHtml(icons.book)}${book}</a>`,
  ];
  const page = `<header class="top"><h1>${bench}</h1></header><div class="news"></div><div class="tasks">${cards.join('')}</div>`;
  return `<main class="page bench">${page}</main><nav class="tabs">${tabs.join('')}</nav>`;
}

/** What a host that can send headers adds to it. */
const headers = {
  'Content-Security-Policy': "frame-ancestors 'none'",
  'Permissions-Policy': 'camera=(self), microphone=(), geolocation=(), payment=(), usb=(), serial=(self)',
  'Referrer-Policy': 'no-referrer',
  'X-Content-Type-Options': 'nosniff',
  'Cross-Origin-Opener-Policy': 'same-origin',
};
const closed: Plugin = {
  name: 'closed',
  apply: 'build',
  transformIndexHtml: () => [
    { tag: 'meta', attrs: { 'http-equiv': 'Content-Security-Policy', content: policy }, injectTo: 'head-prepend' },
    { tag: 'meta', attrs: { name: 'referrer', content: 'no-referrer' }, injectTo: 'head-prepend' },
  ],
};

export default defineConfig({
  base: './',
  plugins: [pwa, closed, bench, schema, otherWords],
  worker: { plugins: () => [otherWords] },
  oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
  build: {
    target: 'es2022',
    modulePreload: { polyfill: false },
    // What the first screen needs comes in one file: each more costs a slow phone some milliseconds.
    rolldownOptions: { output: { codeSplitting: { groups: [{ name: 'first', tags: ['$initial'] }] } } },
  },
  preview: { headers }, // as README advises for a host
  test: {
    maxWorkers: 2, // two browsers at a time: more of them wait for each other on a small machine
    projects: [
      // Time limits are there for what hangs, not for what is slow: a busy machine may take ten times as long.
      {
        extends: true,
        test: {
          name: 'unit',
          pool: 'threads',
          isolate: false, // a thread of its own for each file would double the cost
          setupFiles: ['tests/freshModules.ts'],
          include: ['tests/**/*.test.ts'],
          exclude: ['tests/browser/**', '**/*.long.test.ts'],
          testTimeout: 60_000,
          hookTimeout: 60_000,
        },
      },
      {
        extends: true,
        test: {
          name: 'long',
          pool: 'threads',
          include: ['tests/**/*.long.test.ts'],
          testTimeout: 600_000,
          hookTimeout: 600_000,
        },
      },
      {
        extends: true,
        test: {
          name: 'browser',
          include: ['tests/browser/**/*.test.ts'],
          testTimeout: 300_000,
          hookTimeout: 300_000,
        },
      },
    ],
  },
});
