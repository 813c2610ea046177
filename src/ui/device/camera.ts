import { useSignal, type ReadonlySignal } from '@preact/signals';
import type { RefObject } from 'preact';
import { useLayoutEffect } from 'preact/hooks';

/** A light beside the camera: on or not, and how to switch it. */
export interface Torch {
  readonly on: boolean;
  readonly flip: () => void;
}

/** Why there is no picture: the page may not, another app has it, there is none. */
export type CameraTrouble = 'refused' | 'busy' | 'none';

export interface Camera {
  /** Null where there is a picture, or where it is not known yet. */
  readonly trouble: ReadonlySignal<CameraTrouble | null>;
  /** Null where there is none, or where it is not known yet. */
  readonly torch: ReadonlySignal<Torch | null>;
}

/** The camera at the back, shown in a video element for as long as that is on the screen; it goes out in the moment in which that leaves. It is asked for once. */
export function useCamera(video: RefObject<HTMLVideoElement | null>): Camera {
  const trouble = useSignal<CameraTrouble | null>(null);
  const torch = useSignal<Torch | null>(null);
  useLayoutEffect(() => {
    let gone = false;
    let stream: MediaStream | null = null;
    const begin = async () => {
      try {
        stream = await askForCamera();
      } catch (error) {
        trouble.value = whyNot(error);
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
  return { trouble, torch };
}

function stop(stream: MediaStream | null): void {
  stream?.getTracks().forEach((track) => track.stop());
}

function askForCamera(): Promise<MediaStream> {
  if (!navigator.mediaDevices) throw new DOMException('', 'NotSupportedError');
  const video = { facingMode: { ideal: 'environment' }, width: { ideal: 1280 }, height: { ideal: 720 } };
  return navigator.mediaDevices.getUserMedia({ video, audio: false });
}

function whyNot(error: unknown): CameraTrouble {
  const name = error instanceof DOMException ? error.name : '';
  if (name === 'NotAllowedError') return 'refused';
  return name === 'NotReadableError' ? 'busy' : 'none';
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
