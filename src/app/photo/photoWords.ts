import type { AnyRecord } from '../../records/kind/kinds';
import type { Photo } from '../../records/kind/photo';
import type { PhotoAmount } from '../../records/photos';
import { formatCount, formatDay } from '../../ui/format';
import { sizeWords } from '../nav/keepingWords';
import { describe } from '../describe/describe';

/** '1 photo', '3 photos'; '' when there is none. */
export function photosText(count: number): string {
  if (count === 0) return '';
  return count === 1 ? '1 photo' : `${formatCount(count)} photos`;
}

/** '3 photos (0.6 MB)'; '' when there is none. */
export function photosAndSize({ count, bytes }: PhotoAmount): string {
  return count === 0 ? '' : `${photosText(count)} (${sizeWords(bytes)})`;
}

/** What a photo shows, for who cannot see it. */
export function photoAlt(record: AnyRecord, { taken }: Photo): string {
  const { code, title } = describe(record);
  return `Photo of ${code ?? title}, taken ${formatDay(taken)}`;
}
