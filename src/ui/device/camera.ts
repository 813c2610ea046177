import { useSignal, type ReadonlySignal } from '@preact/signals';
import type { RefObject } from 'preact';
import { useLayoutEffect } from 'preact/hooks';

/** A light beside the camera: on or not, and how to switch it. */
export interface Torch {
  readonly on: boolean;
  readonly flip: () => void;
}

export interface Camera {
  /** One sentence when there is no picture, else ''. */
  readonly problem: ReadonlySignal<string>;
  /** Null where there is none, or where it is not known yet. */
  readonly torch: ReadonlySignal<Torch | null>;
}

/** The camera at the back, shown in a video element for as long as that is on the screen; it goes out in the moment in which that leaves. It is asked for once. */
export function useCamera(video: RefObject<HTMLVideoElement | null>): Camera {
  const problem = useSignal('');
  const torch = useSignal<Torch | null>(null);
  useLayoutEffect(() => {
    let gone = false;
    let stream: MediaStream | null = null;
    const begin = async () => {
      try {
        stream = await askForCamera();
      } catch (error) {
        problem.value = whyNot(error);
        return;
      }
      if (gone || !video.current) return stop(stream);
      video.current.srcObject = stream;
      await video.current.play().catch(() => {}); // the element plays by itself as soon as it can
      const track = stream.getVideoTracks()[0]!;
      // phones end it in the background, and its light with it
      track.addEventListener('ended', () => gone || ((torch.value = null), void begin()));
      torch.value = torchOf(track, false, (next) => (torch.value = next));
    };
    void begin();
    return () => {
      gone = true;
      stop(stream);
    };
  }, []);
  return { problem, torch };
}

function stop(stream: MediaStream | null): void {
  stream?.getTracks().forEach((track) => track.stop());
}

function askForCamera(): Promise<MediaStream> {
  if (!navigator.mediaDevices) throw new DOMException('', 'NotSupportedError');
  const video = { facingMode: { ideal: 'environment' }, width: { ideal: 1280 }, height: { ideal: 720 } };
  return navigator.mediaDevices.getUserMedia({ video, audio: false });
}

function whyNot(error: unknown): string {
  const name = error instanceof DOMException ? error.name : '';
  if (name === 'NotAllowedError')
    return 'Minim may not use the camera. Allow it in the settings of the browser, or type the code from the label.';
  if (name === 'NotReadableError') return 'Another app is using the camera. Close it, or type the code from the label.';
  return 'There is no camera here. Type the code from the label.';
}

/** The torch in a state; flipping hands back the next one. */
function torchOf(track: MediaStreamTrack, on: boolean, then: (torch: Torch | null) => void): Torch | null {
  const can = (track.getCapabilities?.() ?? {}) as { torch?: boolean };
  if (!can.torch) return null;
  const flip = () =>
    void track.applyConstraints({ advanced: [{ torch: !on } as MediaTrackConstraintSet] }).then(
      () => then(torchOf(track, !on, then)),
      () => then(null),
    );
  return { on, flip };
}
