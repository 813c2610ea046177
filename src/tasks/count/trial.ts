import { compositionOf } from '../../core/drink/dose';
import { massOfDrops } from '../../core/drop/drop';
import { over, plus, scaled, times, type Measured } from '../../core/number/measured';
import type { Vial } from '../../records/kind/vial';
import { formatKnown } from '../../ui/format';
import type { RunState } from '../engine/fold';
import type { DropOnHand } from '../../workshop/dropMass';
import { areFood } from '../../workshop/drinkable/gradeCause';
import { dropperOf } from './fields';
import { countedDrops } from './rounds';
import { dropOfStock, stockOf, strengthOf, type Stock } from './stock';
import { asWeighedTogether, massOfStock, type Counted } from './weights';

/** What the trial really is, largest part first: masses in g, `total` of the liquid; `share` of all neat material and `strength` in the liquid, g/g. */
export interface Trial {
  readonly counted: readonly Counted[];
  readonly total: Measured;
  readonly active: Measured;
  readonly volumeMl: number;
  readonly parts: readonly {
    readonly material: string;
    readonly name: string;
    readonly active: Measured;
    readonly share: Measured;
    readonly strength: Measured;
  }[];
}

/** What drops of these stocks weigh; `token` tells the counting of this run from that of others in the stored numbers. */
function weighed(run: RunState, ids: readonly string[], token: string): Counted[] {
  const counted = [...new Set(ids)].flatMap((id) => {
    const stock = stockOf(id);
    const drops = countedDrops(run, id);
    if (!stock || drops === 0) return [];
    const drop = dropOfStock(stock, dropperOf(run));
    return [{ stock, drops, drop, mass: massOfStock(run, stock, { drops, drop, token }) }];
  });
  return asWeighedTogether(run, counted, token);
}

/**
 * The trial as counted from these stocks. A calibration or strength that lines share is right or wrong in all of them.
 * @throws Refusal when nothing was counted
 */
export function trialOf(run: RunState, ids: readonly string[], token = 'this'): Trial {
  const counted = weighed(run, ids, token);
  const lines = counted.flatMap(({ stock, mass }) =>
    stock.contents.map(({ material, strength }) => ({ material, active: times(mass, strength) })),
  );
  const composition = compositionOf(lines);
  const names = new Map(counted.flatMap(({ stock }) => stock.contents.map(({ material, name }) => [material, name])));
  const total = plus(...counted.map(({ mass }) => mass));
  return {
    counted,
    total,
    active: plus(...composition.map(({ active }) => active)),
    volumeMl: counted.reduce((sum, { mass, stock }) => sum + mass.value / stock.densityGPerMl, 0),
    parts: composition
      .map((part) => ({
        ...part,
        name: names.get(part.material) ?? part.material,
        strength: over(part.active, total),
      }))
      .sort((a, b) => b.share.value - a.share.value),
  };
}

/** The liquid of a trial: none for neat drops, the one solvent all share, or a mixture that behaves like its slowest part. */
export function solventOfTrial({ counted }: Trial): Vial['solvent'] {
  const used = counted.flatMap(({ stock, mass }) =>
    stock.solvent ? [{ solvent: stock.solvent, g: mass.value * (1 - strengthOf(stock)) }] : [],
  );
  const first = used[0]?.solvent;
  if (!first) return null;
  if (used.every(({ solvent }) => solvent.id === first.id))
    return { ...first, food: areFood(used.map(({ solvent }) => solvent)) };
  const volume = used.reduce((sum, { solvent, g }) => sum + g / solvent.density.gPerMl, 0); // mL
  const flashes = used.flatMap(({ solvent }) => solvent.flashC ?? []);
  return {
    id: 'mixed',
    name: [...new Set(used.map(({ solvent }) => solvent.name))].join(' and '),
    density: {
      gPerMl: used.reduce((sum, { g }) => sum + g, 0) / volume,
      atC: first.density.atC,
      source: 'from its parts, volumes added',
    },
    food: areFood(used.map(({ solvent }) => solvent)),
    dryOff: slowest(used.map(({ solvent }) => solvent.dryOff)),
    ...(flashes.length > 0 ? { flashC: Math.min(...flashes) } : {}),
  };
}

type DryOff = NonNullable<Vial['solvent']>['dryOff'];

function slowest(found: readonly DryOff[]): DryOff {
  return (['stays wet', 'unknown', 'hours', 'minutes'] as const).find((one) => found.includes(one))!;
}

/** A mass of neat material at the pad, in words: as many digits as its ± leaves, which the pad has no room for. */
export function activeText(stock: Stock, drops: number, { mgPerDrop, spread }: DropOnHand): string {
  const mass = massOfDrops({ drops, mgPerDrop, perDropSpread: spread, id: 'pad', words: 'counting' });
  const active = times(mass, plus(...stock.contents.map(({ strength }) => strength)));
  return `${formatKnown(scaled(active, 1000))} mg ${stock.contents.length === 1 ? stock.contents[0]!.name : 'neat material'}`;
}
