import { measured } from '../../core/number/measured';
import { worth, type Part, type Worth } from '../../core/sensory/worth';
import { list } from '../../records/shelf';
import type { Result } from '../../ui/controls/result';
import type { RunState } from '../engine/fold';
import type { Step } from '../engine/task';
import { smellOf } from './families';
import { smelledSets } from './tries';
import { formatFixed } from '../../ui/format';
import { tagOfId } from '../../workshop/thing/labelled';

const SHOWN = 5;

/** Which vials and pairs help, as a hint with its ±, and only when there are tries enough. */
export function helpingStep(run: RunState, back: Pick<Step, 'key' | 'done' | 'next'>): Step {
  const tries = smelledSets(run).flatMap(({ vials, liking }) => (liking === null ? [] : [{ vials, liking }]));
  const found = tries.length >= 3 ? worth(tries) : null;
  const results = found ? resultsOf(found, tries.length) : [];
  const told =
    tries.length === 1 ? '1 layering has a liking so far.' : `${tries.length} layerings have a liking so far.`;
  if (results.length === 0)
    return {
      ...back,
      say: 'Too early to say which ones help.',
      more: [
        told,
        'The hint appears from 15 liked layerings, and only if likings predict each other better than their mean; pairs need four per vial.',
      ],
    };
  return {
    ...back,
    say: 'What seems to help (a hint, not a result).',
    more: [
      told,
      found!.pairsReady
        ? 'The top pair is right about two times in three: smell it again.'
        : 'Pairs need more layerings.',
    ],
    results,
  };
}

function resultsOf(found: Worth, tries: number): Result[] {
  const { vialsReady, pairsReady, byVial, byPair } = found;
  const parts = [...(vialsReady ? byVial.slice(0, SHOWN) : []), ...(pairsReady ? byPair.slice(0, SHOWN) : [])];
  return parts.map((part) => resultOf(part, found, tries));
}

function resultOf({ vials, worth: value, uncertainty }: Part, found: Worth, tries: number): Result {
  const label = vials.map(codeOf).join(' + ');
  const source = { id: `worth:${label}`, words: `scatter of ${tries} likings, shrunk towards nothing` };
  return {
    label: vials.length === 1 ? label : `${label}, together`,
    amount: measured(value, uncertainty, source),
    unit: 'points of liking',
    how: {
      words: [
        'The liking of all layerings, taken apart into one part for each vial and one for each pair (ridge regression).',
        'Likings run from 1 to 9; a part says how many points above or below the mean it moves a layering.',
      ],
      inputs: [
        { words: 'Layerings with a liking', text: String(tries), source: 'your notes and verdicts' },
        { words: 'Mean liking', text: formatFixed(found.mean, 1), source: 'your notes and verdicts' },
      ],
    },
  };
}

function codeOf(smell: string): string {
  return tagOfId(list('vial').find(({ id }) => smellOf(id) === smell)?.id) ?? 'a vial that is gone';
}
