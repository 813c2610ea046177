import { useSignal } from '@preact/signals';
import { Refusal } from '../../core/text/refusal';
import type { AnyRecord } from '../../records/kind/kinds';
import { keepPhoto, photosOf } from '../../records/photos';
import { FileButton } from '../../ui/controls/FileButton';
import { shrinkPicture } from '../../ui/device/shrinkPicture';
import { refusalWords } from '../../ui/sentence';
import { sizeWords } from '../nav/keepingWords';
import { go } from '../nav/route';
import { photoAlt, photosText } from './photoWords';
import { Picture } from './Picture';
import './photos.css';

/** The photos of a thing or a run; nothing where there are none. */
export function Photos({ record }: { record: AnyRecord }) {
  if (photosOf(record.id).length === 0) return null;
  return (
    <section class="photos">
      <h2>Photos</h2>
      <Thumbnails record={record} />
    </section>
  );
}

/** The ways to add a photo. */
export function AddPhotos({ record }: { record: AnyRecord }) {
  const told = useSignal('');
  const trouble = useSignal('');
  const add = async (files: readonly File[]) => {
    [told.value, trouble.value] = ['One moment…', ''];
    const { sizes, problem } = await addAll(record.id, files);
    const bytes = sizes.reduce((sum, size) => sum + size, 0);
    [told.value, trouble.value] = [
      bytes > 0 ? `Stored: ${photosText(sizes.length)}, ${sizeWords(bytes)}.` : '',
      problem,
    ];
  };
  return (
    <section class="photos">
      <div class="photo-ways">
        <FileButton words="Take a photo" name="camera" accept="image/*" camera onFiles={(files) => void add(files)} />
        <FileButton
          words="Choose photos"
          name="photos"
          accept="image/*"
          multiple
          onFiles={(files) => void add(files)}
        />
      </div>
      <p role="status">{told.value}</p>
      {trouble.value && (
        <p class="trouble" role="alert">
          {trouble.value}
        </p>
      )}
    </section>
  );
}

function Thumbnails({ record }: { record: AnyRecord }) {
  return (
    <ul class="photo-list">
      {photosOf(record.id).map((photo) => (
        <li key={photo.id}>
          <button onClick={() => go(['record', record.id, 'photo', photo.id])}>
            <Picture photo={photo} alt={photoAlt(record, photo)} />
          </button>
        </li>
      ))}
    </ul>
  );
}

/** Shrinks and stores one after the other; gives the bytes of each that is stored, and why one is not. */
async function addAll(of: string, files: readonly File[]): Promise<{ sizes: number[]; problem: string }> {
  const sizes: number[] = [];
  let problem = '';
  for (const file of files) {
    try {
      const small = await shrinkPicture(file);
      await keepPhoto(of, { ...small, taken: takenOf(file) });
      sizes.push(small.bytes);
    } catch (error) {
      if (error instanceof Refusal) problem = refusalWords(error);
      else problem = `The phone could not store this: ${error instanceof Error ? error.message : String(error)}`;
    }
  }
  return { sizes, problem };
}

/** When the file was last written, which for a photo is when it was taken; never later than now. */
function takenOf({ lastModified }: File): string {
  return new Date(Math.min(lastModified, Date.now())).toISOString();
}
