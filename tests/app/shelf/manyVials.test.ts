import { beforeAll, expect, test } from 'vitest';
import { shortCode } from '../../../src/core/label/shortCode';
import { exact } from '../../../src/core/number/measured';
import { newRecord, shelf, takeIn } from '../../../src/records/shelf';
import type { Vial } from '../../../src/records/kind/vial';
import { oils } from '../../../src/tables/catalogue/oils';
import { substances } from '../../../src/tables/catalogue/substances';
import { searchShelf } from '../../../src/app/describe/shelfIndex';
import { FIRST, withoutHeadings } from '../../../src/app/shelf/hits';
import { letterOf, WITH_LETTER } from '../../../src/app/shelf/letters';
import { vialOf } from '../../tasks/count/countShelf';

const STRENGTHS = [0.001, 0.01, 0.05, 0.1];
const KEYS = 3;
let vials: Vial[];

beforeAll(() => {
  shelf.records.value = new Map();
  const rows = [...substances.slice(0, 25), ...oils.slice(0, 25)]; // esters of one name, oils of one fruit: the hardest there are
  const names = [...new Set(rows.map(({ name }) => name))];
  expect(names).toHaveLength(50);
  const codes: string[] = [];
  for (const name of names) codes.push(shortCode(name, codes));
  const materials = names.map((name, i) =>
    newRecord('material', { id: `m${i}`, name, code: codes[i]!, sort: 'natural', form: 'liquid' } as never),
  );
  const bottles = names.map((_, i) =>
    newRecord('bottle', {
      id: `b${i}`,
      material: `m${i}`,
      supplier: 'Saltmarsh',
      lot: `L${i}`,
      grade: 'fit for drinks',
    }),
  );
  vials = names.flatMap((name, i) =>
    STRENGTHS.map((strength) => ({
      ...vialOf(`v${i} ${strength}`, strength, { material: `m${i}` }),
      code: codes[i]!,
      name,
      contents: [{ material: `m${i}`, name, strength: exact(strength) }],
      label: { value: strength * 100, basis: '% w/v' as const },
    })),
  );
  takeIn([...materials, ...bottles, ...vials]);
});

test('any of 200 vials is in sight after three keys', () => {
  expect(vials).toHaveLength(200);
  const isHidden = (id: string, word: string) => {
    const hits = withoutHeadings(searchShelf(word.slice(0, KEYS).toLowerCase(), 60));
    return hits.slice(0, FIRST).every((hit) => hit.id !== id);
  };
  const hidden = vials.filter(({ id, code, name }) => [code, ...name.split(/\W+/)].every((word) => isHidden(id, word)));
  expect(hidden.map(({ code, label }) => `${code} ${label.value}`)).toEqual([]);
});

test('or after a tap on its letter, and the next one opens it', () => {
  const of = (letter: string) => vials.filter((vial) => letterOf(vial) === letter).length;
  expect(Math.max(...vials.map((vial) => of(letterOf(vial))))).toBeLessThanOrEqual(WITH_LETTER); // drawn without another tap
});
