import { typedText } from '../../core/number/typed';
import type { RecordOf } from '../../records/kind/kinds';
import { choice, optionalAmount, words, type Field } from '../../tasks/engine/fields';
import { editable, put, type Editable, type Typed } from './editing';

type Material = RecordOf<'material'>;
type Threshold = NonNullable<Material['thresholds']>[number];
type Part = 'low' | 'high' | 'medium' | 'unit' | 'kind' | 'source';

/** Under this name stands how many thresholds are to be added. */
export const MORE_THRESHOLDS = 'thresholds.more';

const units = ['µg/kg', 'mg/kg', 'µg/L', 'mg/L', 'mg/m³'];
const kinds = ['detection', 'recognition'];
const within = { min: 1e-6, max: 1e9 }; // our choice: beyond it another unit is meant

/** What is asked of each threshold that the person gave, and of those to be added. What is there from the catalogue is not asked and stays. */
export function thresholdFields(record: Material, typed: Typed): Editable<Material>[] {
  const there = record.thresholds ?? [];
  const added = Array.from({ length: Number(typed[MORE_THRESHOLDS] ?? 0) }, (_, i) => there.length + i);
  const places = [...there.flatMap(({ own }, i) => (own ? [i] : [])), ...added];
  const set = (old: Material) => put<Material, Threshold[]>(old, 'thresholds', all(record, typed, added));
  return places.flatMap((i) =>
    asked(there[i], typed, i).map(({ field, text, part }) => ({
      ...editable(field, text, set),
      ...(part === undefined ? {} : { part }),
    })),
  );
}

/** All of them, in their order: as they stand, as typed, and without those whose number was taken out; null when none is left. */
function all(record: Material, typed: Typed, added: readonly number[]): Threshold[] | null {
  const there = (record.thresholds ?? []).flatMap((one, i) => (one.own ? thresholdAt(one, typed, i) : one));
  const found = [...there, ...added.flatMap((i) => thresholdAt(undefined, typed, i))];
  return found.length > 0 ? found : null;
}

const nameOf = (i: number, part: Part) => `thresholds.${i}.${part}`;

/** What is in the fields of one. */
function textsOf(now: Threshold | undefined, typed: Typed, i: number): Record<Part, string> {
  const at = (part: Part, text: string) => typed[nameOf(i, part)] ?? text;
  const medium = at('medium', now?.medium ?? 'water').trim();
  return {
    low: at('low', now ? typedText(now.low) : ''),
    high: at('high', now && now.high > now.low ? typedText(now.high) : ''),
    medium,
    unit: at('unit', now?.unit ?? (medium.toLowerCase() === 'air' ? 'mg/m³' : 'µg/kg')),
    kind: at('kind', now?.kind ?? 'detection'),
    source: at('source', now?.source ?? 'as typed'),
  };
}

function amounts(texts: Record<Part, string>, i: number): { low: Field<number | null>; high: Field<number | null> } {
  const { unit } = texts;
  const low = optionalAmount({ name: nameOf(i, 'low'), title: 'Smelled from', unit, ...within });
  const high = optionalAmount({
    name: nameOf(i, 'high'),
    title: 'Or up to',
    unit,
    ...within,
    help: 'Optional, for where sources differ.',
  });
  const from = low.read(texts.low);
  return {
    low,
    high: {
      ...high,
      read: (text) => {
        const answer = high.read(text);
        if (!answer.ok || answer.value === null || !from.ok) return answer;
        if (from.value === null) return { ok: false, why: '“Smelled from” is still empty.' };
        return answer.value < from.value ? { ok: false, why: 'That is less than where it begins.' } : answer;
      },
    },
  };
}

type Asked = Pick<Editable<Material>, 'field' | 'text' | 'part'>;

function asked(now: Threshold | undefined, typed: Typed, i: number): Asked[] {
  const texts = textsOf(now, typed, i);
  const { low, high } = amounts(texts, i);
  const among = (values: readonly string[], text: string) =>
    (values.includes(text) ? values : [...values, text]).map((value) => ({ value, label: value }));
  return [
    { field: low, text: texts.low, part: 'Odour threshold' },
    { field: high, text: texts.high },
    {
      field: words({ name: nameOf(i, 'medium'), title: 'Medium', max: 40, help: 'Water, air, spirit of 10 % …' }),
      text: texts.medium,
    },
    { field: choice({ name: nameOf(i, 'unit'), title: 'Unit', options: among(units, texts.unit) }), text: texts.unit },
    {
      field: choice({ name: nameOf(i, 'kind'), title: 'It is a threshold of', options: among(kinds, texts.kind) }),
      text: texts.kind,
    },
    { field: words({ name: nameOf(i, 'source'), title: 'Source', max: 200 }), text: texts.source },
  ];
}

/** One as typed; nothing where its number is empty or will not do. */
function thresholdAt(now: Threshold | undefined, typed: Typed, i: number): Threshold[] {
  const texts = textsOf(now, typed, i);
  const { low, high } = amounts(texts, i);
  const [from, to] = [low.read(texts.low), high.read(texts.high)];
  if (!from.ok || from.value === null) return [];
  const upTo = to.ok && to.value !== null ? to.value : from.value;
  const { medium, unit, kind, source } = texts;
  return [{ medium, kind, low: from.value, high: upTo, unit, source: source.trim(), own: true }];
}
