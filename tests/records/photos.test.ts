import { beforeEach, expect, test } from 'vitest';
import { Refusal } from '../../src/core/text/refusal';
import { backupSchema } from '../../src/records/backup/backupSchema';
import { kinds } from '../../src/records/kind/kinds';
import { readRecord } from '../../src/records/kind/record';
import { allPhotos, keepPhoto, mostPhotoBytes, photosAmong, photosOf } from '../../src/records/photos';
import { newRecord, shelf, takeIn } from '../../src/records/shelf';
import { portions, weightOf } from '../../src/records/store/change';

const taken = '2026-05-05T10:00:00.000Z';
const photo = (of: string, bytes = 3) =>
  newRecord('photo', { of, taken, width: 1280, height: 960, bytes, picture: `picture of ${of}` });
const picture = () => newRecord('picture', { type: 'image/jpeg', data: 'AAEC' });

beforeEach(() => (shelf.records.value = new Map()));

test('a photo and its picture are read as they were written, and nothing but a JPEG or WebP is a picture', () => {
  for (const [kind, record] of [
    [kinds.photo, photo('vial')],
    [kinds.picture, picture()],
  ] as const)
    expect(readRecord<unknown>(kind, record)).toEqual({ ok: true, value: record });
  expect(readRecord(kinds.picture, { ...picture(), type: 'image/svg+xml' }).ok).toBe(false);
  expect(readRecord(kinds.photo, { ...photo('vial'), of: undefined }).ok).toBe(false);
});

test('the published schema says what a photo and a picture hold', () => {
  const { $defs } = backupSchema() as { $defs: Record<string, { required: string[]; properties: object }> };
  expect($defs['photo']!.required).toEqual(expect.arrayContaining(['of', 'taken', 'width', 'height', 'bytes']));
  expect($defs['picture']!.properties).toMatchObject({ type: { enum: ['image/jpeg', 'image/webp'] } });
});

test('a photo is on hand at its thing, and its picture is not held', () => {
  const [first, other, shown] = [photo('vial', 200), photo('run', 100), picture()];
  takeIn([first, other, shown]);
  expect(photosOf('vial')).toEqual([first]);
  expect(photosOf('run', 'vial').map(({ of }) => of)).toEqual(['run', 'vial']);
  expect(allPhotos()).toEqual({ count: 2, bytes: 300 });
  expect(shelf.records.value.has(shown.id)).toBe(false);
  expect(shelf.unreadable.value).toEqual([]);
});

test('what a backup has no room for is refused before it is stored', async () => {
  takeIn([photo('vial', mostPhotoBytes - 10)]);
  const next = { type: 'image/jpeg', data: 'AAEC', taken, width: 1, height: 1, bytes: 11 } as const;
  await expect(keepPhoto('vial', next)).rejects.toThrow(Refusal);
  await expect(keepPhoto('vial', next)).rejects.toThrow('the photos take 60.0 MB');
});

test('photos of a file are counted by their pictures, whatever else is in it', () => {
  const items = [picture(), photo('vial', 1e9), null, 3, { kind: 'picture' }, { kind: 'picture', data: 7 }, picture()];
  expect(photosAmong(items)).toEqual({ count: 2, bytes: 6 });
});

test('changes are handed on in their order, a picture counting as 250 records', () => {
  const small = Array.from({ length: 600 }, () => ({ gone: 'x' }));
  const large = Array.from({ length: 9 }, () => ({ record: picture() }));
  const all = [...small, ...large];
  const parts = [...portions(all, 1000)];
  expect(parts.flat()).toEqual(all);
  expect(parts.map((part) => part.length)).toEqual([602, 4, 3]);
  expect(Math.max(...parts.map((part) => part.reduce((sum, change) => sum + weightOf(change), 0)))).toBeLessThan(1250);
});
