import { hueOf } from '../../ui/drawn/hue';
import type { MakingState } from '../../ui/drawn/StateMark';
import { Vial } from '../../ui/drawn/Vial';
import { strengthWords } from '../../workshop/thing/labelled';
import type { RunState } from '../engine/fold';
import { madeOf } from './made';
import { inMl, type Order } from './making';
import { asPlanned, isReady } from './rack';
import { gradeOf } from './source';
import { writtenOn } from './vialMade';

interface Look {
  /** Height, CSS px. */
  readonly size: number;
  readonly state?: MakingState | undefined;
  /** Drawn as filled by the plan; else empty. */
  readonly full: boolean;
  /** The grade is still to be said: nothing is drawn of it. */
  readonly ungraded?: boolean;
}

/** The vial as it was made or, while nothing is in it, as the plan will make it: its label, and how far the solvent fills it. */
export function drawVial(run: RunState, order: Order, { size, state, full, ungraded = false }: Look) {
  const as = isReady({ run, order }) ? run : asPlanned(run, order);
  const { label, code } = writtenOn(as, order, madeOf(as, order));
  const tag = {
    code: code.own ?? code.free,
    strength: strengthWords(label),
    share: label.value / (label.basis.startsWith('%') ? 100 : 1e6),
  };
  const level = full ? inMl(order, order.plan.solventG) / order.sizeMl : 0;
  const smellOnly = !ungraded && gradeOf(order.source, order.solvent) === 'smell only';
  return (
    <Vial
      size={size}
      level={level}
      tag={tag}
      hue={hueOf(tag.code)}
      smellOnly={smellOnly}
      {...(state ? { state } : {})}
    />
  );
}
