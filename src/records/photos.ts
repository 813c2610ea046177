import { Refusal } from '../core/text/refusal';
import { kinds, type RecordOf } from './kind/kinds';
import type { Photo } from './kind/photo';
import type { Picture } from './kind/picture';
import { readRecord } from './kind/record';
import { keep, list, newRecord } from './shelf';
import { storedRecord } from './store/database';

/** Photos by number and size. */
export interface PhotoAmount {
  readonly count: number;
  readonly bytes: number;
}

/**
 * Bytes of all photos together. Our choice: in a backup they are 80 MB of text, in a locked one 107 MB of the 128 MB that
 * Minim opens (`largestBackup`), which leaves room for more than 20,000 records.
 */
export const mostPhotoBytes = 60e6;

/** Photos of things and runs, newest first. */
export function photosOf(...ids: readonly string[]): Photo[] {
  return list('photo').filter(({ of }) => ids.includes(of));
}

/** All photos together. */
export function allPhotos(): PhotoAmount {
  const photos = list('photo');
  return { count: photos.length, bytes: photos.reduce((sum, { bytes }) => sum + bytes, 0) };
}

/** The photos among records of whatever origin; what is measured is the pictures themselves. */
export function photosAmong(items: readonly unknown[]): PhotoAmount {
  const sizes = items.flatMap((item) => {
    const { kind, data } = (item ?? {}) as Partial<Picture>;
    return kind === 'picture' && typeof data === 'string' ? Math.floor((data.length * 3) / 4) : [];
  });
  return { count: sizes.length, bytes: sizes.reduce((sum, bytes) => sum + bytes, 0) };
}

/** A picture to be stored. */
export interface Taken extends Pick<Picture, 'type' | 'data'>, Pick<Photo, 'taken' | 'width' | 'height' | 'bytes'> {}

/**
 * Stores a photo of a thing or a run, in both copies.
 * @throws Refusal where a backup would become larger than Minim opens.
 */
export async function keepPhoto(of: string, { type, data, ...facts }: Taken): Promise<void> {
  const { bytes } = allPhotos();
  if (bytes + facts.bytes > mostPhotoBytes)
    throw new Refusal(
      'the photos take {all} MB, and a backup has room for {most} MB of them: remove some, then add this one',
      { all: { value: bytes / 1e6, decimals: 1 }, most: mostPhotoBytes / 1e6 },
    );
  const picture = newRecord('picture', { type, data });
  await keep([newRecord('photo', { of, ...facts, picture: picture.id }), picture]);
}

/** What a photo shows, read from the store; null where it is missing or cannot be read. */
export async function pictureOf({ picture }: Photo): Promise<RecordOf<'picture'> | null> {
  const raw = await storedRecord(picture);
  const read = raw?.kind === 'picture' ? readRecord(kinds.picture, raw) : null;
  return read?.ok ? read.value : null;
}
