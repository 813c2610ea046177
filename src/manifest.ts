import type { ManifestOptions } from 'vite-plugin-pwa';

const phone = { sizes: '780x1560', type: 'image/png', form_factor: 'narrow' } as const;
const shortcutIcons = [
  { src: 'icon-192.png', sizes: '192x192', type: 'image/png' },
  { src: 'icon.svg', sizes: 'any', type: 'image/svg+xml' },
];

/**
 * What a phone knows of the app on its home screen. It has no `id`: one would be read from the root of the host, and make two
 * copies in two folders of it one app; without it the start address, which has the folder in it, tells them apart.
 * Source: W3C Web Application Manifest.
 */
export const manifest: Partial<ManifestOptions> = {
  name: 'Minim',
  short_name: 'Minim',
  description: 'Drops, dilutions, strips and doses at the flavour bench, offline.',
  start_url: './',
  scope: './',
  display: 'standalone',
  display_override: ['standalone', 'minimal-ui'],
  orientation: 'any',
  background_color: '#f3efe4',
  theme_color: '#f3efe4',
  categories: ['food', 'productivity', 'utilities'],
  launch_handler: { client_mode: ['focus-existing', 'auto'] },
  icons: [
    { src: 'icon-192.png', sizes: '192x192', type: 'image/png' },
    { src: 'icon-512.png', sizes: '512x512', type: 'image/png' },
    { src: 'icon-maskable-512.png', sizes: '512x512', type: 'image/png', purpose: 'maskable' },
    { src: 'icon.svg', sizes: 'any', type: 'image/svg+xml' },
    { src: 'icon-monochrome.svg', sizes: 'any', type: 'image/svg+xml', purpose: 'monochrome' },
  ],
  screenshots: [
    { src: 'screenshots/bench.png', label: 'Bench', ...phone },
    { src: 'screenshots/dilute.png', label: 'Dilute', ...phone },
    { src: 'screenshots/count.png', label: 'Count drops', ...phone },
    { src: 'screenshots/dose.png', label: 'Dose a drink', ...phone },
    { src: 'screenshots/layer.png', label: 'Layer strips', ...phone },
    { src: 'screenshots/batch.png', label: 'Make a batch', ...phone },
  ],
  file_handlers: [{ action: './', accept: { 'application/vnd.minim+json': ['.minim'] } }],
  shortcuts: [
    { name: 'Look up ppm', url: './#/new/lookup', icons: shortcutIcons },
    { name: 'Dilute', url: './#/new/dilute', icons: shortcutIcons },
    { name: 'Count drops', url: './#/new/count', icons: shortcutIcons },
    { name: 'Scan a label', url: './#/scan', icons: shortcutIcons },
  ],
};
