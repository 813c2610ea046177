import { useEffect, useRef } from 'preact/hooks';
import { BackButton } from '../../ui/BackButton';
import { onBack } from '../../ui/device/backEntry';
import { useCamera, type CameraTrouble } from '../../ui/device/camera';
import { useReading, View } from '../../ui/device/Scanner';
import { takeCode } from './pairing';

const troubles: Readonly<Record<CameraTrouble, string>> = {
  refused: 'Minim may not use the camera. Allow it in the settings of the browser, or use a file instead of codes.',
  busy: 'Another app is using the camera. Close it and come back here, or use a file instead of codes.',
  none: 'There is no camera here. Copy the code as text on the other device, and paste it here; or use a file.',
};

/** The camera looks for the code of the other device. Fills the screen. */
export function ScanCode({ title, wrong, onClose }: { title: string; wrong: string | undefined; onClose: () => void }) {
  const video = useRef<HTMLVideoElement>(null);
  const camera = useCamera(video);
  const reading = useReading(video, (text) => void takeCode(text));
  useEffect(() => onBack(onClose), []);
  const trouble = camera.trouble.value;
  const heard = wrong ?? (trouble ? '' : reading.value && 'The codes cannot be read on this device. Use a file.');
  return (
    <section class="run scanner" aria-label={title}>
      <header class="top">
        <BackButton onBack={onClose} />
        <h1>{title}</h1>
      </header>
      <View video={video} camera={camera} problem={trouble ? troubles[trouble] : ''} />
      <p class={heard ? 'heard trouble' : 'heard quiet'} role="status" aria-live="assertive">
        {heard || (trouble ? '' : 'Hold the square code on the other screen into the frame.')}
      </p>
      <label class="field typing">
        <span class="title">Paste its code here</span>
        <span class="box">
          <input
            name="code"
            autoComplete="off"
            spellcheck={false}
            onInput={(event) => event.currentTarget.value.length > 20 && void takeCode(event.currentTarget.value)}
          />
        </span>
      </label>
    </section>
  );
}
