import type { AnyRecord } from '../../records/kind/kinds';
import { formatDay, formatPlain } from '../../ui/format';
import { editables } from '../edit/editable';

/** What a field is called where it is not asked for when a thing is changed. */
const TITLES: Readonly<Record<string, string>> = {
  archived: 'Archived',
  emptyG: 'Empty glass with its cap, g',
  name: 'Name',
  cas: 'CAS number',
  density: 'Density',
};

/** What a field of a record is called. */
export function fieldTitle(record: AnyRecord, key: string): string {
  const asked = editables(record).find(({ field }) => field.name === key);
  return asked?.field.title ?? TITLES[key] ?? 'Another detail';
}

const DAY = /^\d{4}-\d\d-\d\d/;

/** A value of a field, in words. */
export function valueText(value: unknown): string {
  if (value === undefined || value === '') return 'nothing';
  if (typeof value === 'number') return formatPlain(value, 4);
  if (typeof value === 'string') return DAY.test(value) ? formatDay(value) : value;
  const { gPerMl, value: number } = (value ?? {}) as { gPerMl?: unknown; value?: unknown };
  const inner = gPerMl ?? number;
  if (typeof inner === 'number') return formatPlain(inner, 4);
  return Array.isArray(value) && value.every((one) => typeof one === 'string') ? value.join(', ') : 'as it is there';
}
