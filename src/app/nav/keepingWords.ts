import { formatCount, formatFixed } from '../../ui/format';

/** '1 record', '34 records'. */
export function recordsText(records: number): string {
  return records === 1 ? '1 record' : `${formatCount(records)} records`;
}

/** '34 records since the last backup, 16 days ago.' */
export function backupWords({ records, days }: { records: number; days: number | null }): string {
  const many = recordsText(records);
  if (days === null) return records === 0 ? 'Nothing to back up yet.' : `${many}, and no backup yet.`;
  const ago = days < 1 ? 'today' : days < 2 ? 'yesterday' : `${Math.floor(days)} days ago`;
  return records === 0 ? `Everything is in the backup made ${ago}.` : `${many} written since the last backup, ${ago}.`;
}

/** 'minim-backup-2026-05-04'; the day by the phone's own zone. */
export function backupName(now = new Date()): string {
  const day = new Date(now.getTime() - now.getTimezoneOffset() * 60_000).toISOString().slice(0, 10);
  return `minim-backup-${day}`;
}

/** '1.2 MB', from bytes. */
export function sizeWords(bytes: number): string {
  if (bytes < 1e6) return `${Math.max(1, Math.round(bytes / 1e3))} kB`;
  return bytes < 1e9 ? `${formatFixed(bytes / 1e6, 1)} MB` : `${formatFixed(bytes / 1e9, 1)} GB`;
}
