import type { Mixture } from '../../../core/drink/mixture';
import type { Batch } from '../../../records/kind/batch';
import { sentenceWords } from '../../../ui/sentence';
import { forFile } from '../../../ui/format';
import { answer } from '../../engine/answers';
import type { RunState } from '../../engine/fold';
import { keepAsked } from '../plan/keepAsked';
import { HARDLY, weighedAcidity } from './acidity';
import { keepFindings } from './keepPart';

/** What the batch keeps of acid and keeping: pH and acid from what was weighed, what was said of it, and the day that was set. */
export function keepingFacts(run: RunState, drink: Mixture, litres: number): Pick<Batch, 'keeping'> {
  const { ph, best, why } = keepAsked(run);
  const measured = answer(run, ph);
  const acidity = weighedAcidity(run, drink, litres);
  const [day, reason] = [answer(run, best), answer(run, why)];
  const said = (keepFindings(run) ?? []).map(({ state, said: words, source }) => ({
    state,
    words: forFile(() => sentenceWords(words)),
    source,
  }));
  return {
    keeping: {
      ...(measured === null ? {} : { phMeasured: measured }),
      ...(acidity && acidity.acidGPerL >= HARDLY ? { phComputed: acidity.ph, acidGPerL: acidity.acidGPerL } : {}),
      said,
      ...(day ? { bestBefore: day } : {}),
      ...(day && reason ? { why: reason } : {}),
    },
  };
}
