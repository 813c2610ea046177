/** Why a part of the program cannot be fetched. Once it is kept on the phone, only an update by another window takes a part away. */
export function whyGone(): string {
  return navigator.serviceWorker?.controller
    ? 'Minim was updated in another window.'
    : 'Minim is not yet kept on this phone, and there is no network.';
}
