import type { Walk } from '../engine/task';
import { StripChips } from './StripChips';
import { inFan } from './strips';

/** Which strip goes out: one tap, then what comes in instead. */
export function SwapOut({ walk }: { walk: Walk }) {
  return <StripChips strips={inFan(walk.state.value)} onStrip={({ vial }) => void walk.goTo(`instead.${vial.id}`)} />;
}
