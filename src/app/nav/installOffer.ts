import { signal } from '@preact/signals';

/** What Chromium hands over when it would install the page; no other browser does. */
interface InstallOffer extends Event {
  prompt(): Promise<unknown>;
}

/** The browser's offer to install Minim, until it was taken or refused. */
export const installOffer = signal<InstallOffer | null>(null);

/** Keeps the browser's offer for the page that explains it, instead of a banner over the Bench. */
export function keepInstallOffer(): void {
  addEventListener('beforeinstallprompt', (event) => {
    event.preventDefault();
    installOffer.value = event as InstallOffer;
  });
  addEventListener('appinstalled', () => (installOffer.value = null));
}
