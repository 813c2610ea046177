import { installOffer } from '../nav/installOffer';

/** How Minim comes onto the home screen of this device, in the words of its browser. */
export function InstallPart() {
  if (matchMedia('(display-mode: standalone)').matches) return null;
  const offer = installOffer.value;
  return (
    <section>
      <h2>On the home screen</h2>
      <p>From there Minim opens in full, without a network, and the browser keeps its database longer.</p>
      {offer ? (
        <button class="second" onClick={() => void offer.prompt().finally(() => (installOffer.value = null))}>
          Install
        </button>
      ) : (
        <p>{isApple() ? appleWords : 'In the browser’s menu choose “Install” or “Add to home screen”.'}</p>
      )}
    </section>
  );
}

const appleWords =
  'In Safari tap the share button, then “Add to Home Screen”. What is in Safari does not come along by itself: save a backup here and restore it there.';

/** iPhone and iPad; an iPad calls itself a Mac with a touch screen. */
function isApple(): boolean {
  const { platform, maxTouchPoints } = navigator;
  return /iPhone|iPad/.test(platform) || (platform === 'MacIntel' && maxTouchPoints > 1);
}
