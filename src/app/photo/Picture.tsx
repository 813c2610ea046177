import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import type { Photo } from '../../records/kind/photo';
import { pictureOf } from '../../records/photos';
import { useFault } from '../../ui/fault/useFault';

/** What a photo shows, read when it is first drawn; its room is there before. */
export function Picture({ photo, alt }: { photo: Photo; alt: string }) {
  const source = useSignal<string | null>('');
  const fault = useFault();
  useEffect(() => {
    pictureOf(photo).then((found) => (source.value = found && `data:${found.type};base64,${found.data}`), fault);
  }, [photo.picture]);
  if (source.value === null) return <span class="no-picture">{alt}: the picture cannot be shown.</span>;
  return (
    <img
      alt={alt}
      width={photo.width}
      height={photo.height}
      {...(source.value && { src: source.value })}
      onError={() => (source.value = null)}
    />
  );
}
