import type { ManifestOptions } from 'vite-plugin-pwa';

/** What a phone knows of the app on its home screen. */
export const manifest: Partial<ManifestOptions> = {
  id: './',
  name: 'Minim',
  short_name: 'Minim',
  description: 'Drops, dilutions, strips and doses at the flavour bench, offline.',
  start_url: './',
  scope: './',
  display: 'standalone',
  orientation: 'any',
  background_color: '#f3efe4',
  theme_color: '#f3efe4',
  icons: [
    { src: 'icon-192.png', sizes: '192x192', type: 'image/png' },
    { src: 'icon-512.png', sizes: '512x512', type: 'image/png' },
    { src: 'icon-maskable-512.png', sizes: '512x512', type: 'image/png', purpose: 'maskable' },
  ],
  file_handlers: [{ action: './', accept: { 'application/vnd.minim+json': ['.minim'] } }],
  shortcuts: [
    { name: 'Look up ppm', url: './#/new/lookup', icons: [{ src: 'icon-192.png', sizes: '192x192' }] },
    { name: 'Dilute', url: './#/new/dilute', icons: [{ src: 'icon-192.png', sizes: '192x192' }] },
  ],
};
