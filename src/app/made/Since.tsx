import type { Batch } from '../../records/kind/batch';
import { BottlesSection } from './BottlesSection';
import { CostSection } from './Cost';
import { MeasuredSection } from './MeasuredSection';
import { TrialsSection } from './TrialsSection';

/** What happened to a batch since it was made, and what it cost: sections of its page. */
export function sinceSections(batch: Batch) {
  return [
    <MeasuredSection batch={batch} />,
    <BottlesSection batch={batch} />,
    <TrialsSection batch={batch} />,
    <CostSection batch={batch} />,
  ];
}
