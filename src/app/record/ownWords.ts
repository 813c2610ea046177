import { isOf, type AnyRecord } from '../../records/kind/kinds';

/** What the person wrote of it, and how it was liked. */
export function ownWords(record: AnyRecord): string[] {
  const liked = (liking: number | null) => (liking === null ? [] : [`liked ${liking} of 9`]);
  const said = (words: string) => (words === '' ? [] : [`“${words}”`]);
  if (isOf('tasting', record)) return [...said(record.verdict), ...liked(record.liking)];
  if (isOf('layering', record)) return [...said(record.verdict.words), ...liked(record.verdict.liking)];
  return 'notes' in record && typeof record.notes === 'string' ? said(record.notes) : [];
}
