import type { Batch } from '../../records/kind/batch';
import { formatDay, formatFixed, formatPlain } from '../../ui/format';
import { facts } from './description';

/** How sour a batch is, what was said of its keeping, and the day that was set. */
export function keepingFacts({ keeping }: Batch): ReturnType<typeof facts> {
  if (!keeping) return [];
  const { phMeasured, phComputed, acidGPerL, said, bestBefore, why } = keeping;
  return facts(
    ['Best before', bestBefore && [formatDay(bestBefore), why].filter(Boolean).join(': ')],
    ['pH', phMeasured === undefined ? undefined : `${formatPlain(phMeasured)}, measured`],
    [
      phMeasured === undefined ? 'pH' : 'pH, computed',
      phComputed === undefined ? undefined : `${formatFixed(phComputed, 1)}, computed from what was weighed`,
    ],
    ['Titratable acid', acidGPerL ? `${formatPlain(acidGPerL, 2)} g/L, as citric acid` : undefined],
    ...said.map(({ state, words, source }) => [KEEPING[state], `${words} (${source})`] as const),
  );
}

const KEEPING = {
  danger: 'Danger',
  outside: 'Keeping: not covered',
  inside: 'Keeping: tested',
  said: 'Keeping',
} as const;
