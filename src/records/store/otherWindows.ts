/** What one window of Minim tells the others on this device. */
export type News =
  /** These records were stored; null: many, or all. */
  | { kept: readonly string[] | null }
  /** Everything is about to be erased. */
  | { erased: true };

let channel: BroadcastChannel | null = null;

/** Listens to the other windows, and lets this one be heard. */
export function listenToOthers(hear: (news: News) => void): void {
  if (typeof BroadcastChannel === 'undefined' || typeof document === 'undefined') return;
  channel = new BroadcastChannel('minim');
  channel.addEventListener('message', ({ data }: MessageEvent<News>) => hear(data));
}

/** Tells the other windows. */
export function tellOthers(news: News): void {
  if (!('kept' in news) || news.kept?.length !== 0) channel?.postMessage(news);
}
