import { typedText } from '../../core/number/typed';
import type { Bottle } from '../../records/kind/material';
import { find } from '../../records/shelf';
import { optionalAmount } from '../../tasks/engine/fields';
import { allergensField, ingredientFields, NONE } from '../../tasks/shared/ingredientFields';
import { editable, put, type Editable } from './editing';

type Holds = NonNullable<Bottle['holds']>;

/** What can be changed of a bottle beside what every bottle has: allergens of any, and what an extract, juice or the like holds. */
export function ingredientFacts(record: Bottle): Editable<Bottle>[] {
  const isMore = find('material', record.material)?.preparation !== undefined || record.holds !== undefined;
  return [
    ...(isMore
      ? [
          part(record, 'brix', 1),
          part(record, 'abv', 100),
          part(record, 'acid', 100),
          part(record, 'solids', 100), // asked in %
        ]
      : []),
    allergensOf(record),
  ];
}

/** One number of what it holds, `times` of which is typed. */
function part(record: Bottle, key: keyof Holds, times: number): Editable<Bottle> {
  const { title, unit = '', help = '', name } = ingredientFields[key];
  const field = optionalAmount({ name: name.replace('new.', ''), title, unit, help, min: 0, max: 100 });
  const now = record.holds?.[key];
  const text = now === undefined ? '' : typedText(Number((now * times).toPrecision(6)));
  return editable(field, text, (old, typed) => {
    const { [key]: _, ...rest } = old.holds ?? {};
    const next = typed === null ? rest : { ...rest, [key]: typed / times };
    return put<Bottle, Holds>(old, 'holds', Object.keys(next).length > 0 ? next : null);
  });
}

function allergensOf(record: Bottle): Editable<Bottle> {
  const now = record.allergens && (record.allergens.join(', ') || NONE);
  return editable(allergensField('allergens'), now ?? '', (old, typed) =>
    put<Bottle, string[]>(old, 'allergens', typed),
  );
}
