import type { Batch } from '../../records/kind/batch';
import { formatDay, formatFixed, formatPlain } from '../../ui/format';
import { facts, type Description } from './description';

/** How sour a batch is, the day that was set, and what was said of its keeping, each with where it comes from. */
export function keepingFacts({ keeping }: Batch): NonNullable<Description['facts']> {
  if (!keeping) return [];
  const { phMeasured, phComputed, acidGPerL, said, bestBefore, why } = keeping;
  const measured = phMeasured === undefined ? '' : `${formatPlain(phMeasured)}, measured`;
  const computed = phComputed === undefined ? '' : `${formatFixed(phComputed, 1)}, computed from what was weighed`;
  return [
    ...facts(
      ['Best before', bestBefore && [formatDay(bestBefore), why].filter(Boolean).join(': ')],
      ['pH', [measured, computed].filter(Boolean).join('; ')],
      ['Titratable acid', acidGPerL ? `${formatPlain(acidGPerL, 2)} g/L, as citric acid` : ''],
    ),
    ...said.map(({ state, words, source }) => [SAYS[state], words, source] as const),
  ];
}

const SAYS = { danger: 'Danger', outside: 'Not covered', inside: 'Tested by others', said: 'Preserved' } as const;
