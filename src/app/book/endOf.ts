import type { Run } from '../../records/kind/run';

/** When a run ended or was discarded, UTC, ISO 8601. */
export function endOf({ discarded, endedAt, made }: Run): string {
  return discarded ?? endedAt ?? made;
}
