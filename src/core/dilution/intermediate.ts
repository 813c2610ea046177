import { gram, massFraction, type Gram, type MassFraction } from '../number/units';
import { Refusal } from '../text/refusal';

/** One weighing together: source (neat or vial) and solvent, g, and the strength it gives, g/g. */
export interface Step {
  readonly source: Gram;
  readonly solvent: Gram;
  readonly strength: MassFraction;
}

/** Share of a bridge vial that can really be drawn out again. Our choice; the rest stays on glass and dropper. */
export const DRAWABLE = 0.9;

/**
 * Strengths 1-2-5 per decade (g/g) strictly between two strengths, strongest first: 50 %, 20 %, 10 %, 5 % … Our choice of
 * ladder (common practice is 10 %, 1 %, 0.1 %, no source).
 * @throws Refusal when `above` is not above zero
 */
export function ladder(below: MassFraction, above: MassFraction): MassFraction[] {
  if (!(above > 0)) throw new Refusal('a target strength is above zero');
  const lowest = Math.floor(Math.log10(above));
  const steps = Array.from({ length: -lowest }, (_, i) => [5, 2, 1].map((digit) => Number(`${digit}e${-1 - i}`)));
  return steps
    .flat()
    .filter((w) => w < below && w > above)
    .map(massFraction);
}

/**
 * A dilution between: for a target that asks for too few drops or too little mass of the source at once.
 * Of the ladder's strengths the one at which the smaller of the two transfers is largest, counted in its own least amount; null when
 * no single bridge gives both transfers their least amount.
 *
 * `batch` g of the target to make, `bridgeBatch` g of the bridge, `leastSource` g the least amount of the source
 * (three drops of it, or smallestMass of the scale), `leastBridge` g the same for the bridge. Three drops: our choice, because
 * a third of the strength then hangs on one drop.
 * @throws Refusal when the target is not below the source
 */
export function intermediate({
  target,
  purity,
  batch,
  bridgeBatch,
  leastSource,
  leastBridge,
}: {
  readonly target: MassFraction;
  readonly purity: MassFraction;
  readonly batch: Gram;
  readonly bridgeBatch: Gram;
  readonly leastSource: Gram;
  readonly leastBridge: Gram;
}): { readonly first: Step; readonly second: Step } | null {
  if (!(target < purity)) throw new Refusal('a bridge leads down: the target must be weaker than the source');
  let best: { worst: number; first: Step; second: Step } | null = null;
  for (const strength of ladder(purity, target)) {
    const first = step(purity, strength, bridgeBatch);
    const second = step(strength, target, batch);
    const worst = Math.min(first.source / leastSource, second.source / leastBridge);
    const enough = worst >= 1 && second.source <= DRAWABLE * bridgeBatch;
    if (enough && worst > (best?.worst ?? 0) * (1 + 1e-9)) best = { worst, first, second };
  }
  return best && { first: best.first, second: best.second };
}

/** One step down from strength `from` to `to` (g/g), `batch` g made. */
function step(from: MassFraction, to: MassFraction, batch: Gram): Step {
  const source = (batch * to) / from;
  return { source: gram(source), solvent: gram(batch - source), strength: to };
}
