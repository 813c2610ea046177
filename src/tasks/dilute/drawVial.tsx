import { hueOf } from '../../ui/drawn/hue';
import type { MakingState } from '../../ui/drawn/StateMark';
import { Vial } from '../../ui/drawn/Vial';
import { strengthWords } from '../../workshop/thing/labelled';
import type { RunState } from '../engine/fold';
import { basisOf, inMl, strengthOf, type Order } from './making';
import { gradeOf } from './source';

interface Look {
  /** Height, CSS px. */
  readonly size: number;
  readonly state?: MakingState | undefined;
  /** Drawn as filled by the plan; else empty. */
  readonly full: boolean;
}

/** The vial that is to be made: its label, and how far the solvent fills it. */
export function drawVial(run: RunState, order: Order, { size, state, full }: Look) {
  const basis = basisOf(run);
  const value = strengthOf(run) ?? 0;
  const tag = {
    code: order.source.code,
    strength: strengthWords({ value, basis }),
    share: value / (basis.startsWith('%') ? 100 : 1e6),
  };
  const level = full ? inMl(order, order.plan.solventG) / order.sizeMl : 0;
  const smellOnly = gradeOf(order.source, order.solvent) === 'smell only';
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
