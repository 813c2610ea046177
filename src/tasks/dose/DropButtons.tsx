import { formatMeasured, formatPlain } from '../../ui/format';
import { useTaps } from '../../ui/controls/TapPad';
import { attempt, Refused } from '../../workshop/attempt';
import { dropsText, ofTarget } from '../../workshop/dropWords';
import type { RunState } from '../engine/fold';
import type { Walk } from '../engine/task';
import { DoseBar } from './DoseBar';
import { named } from './fields';
import { alcoholIsUnknown, dropsOf, glassOf, reachedBy, targetOf, type Glass } from './glass';
import { levelsOf } from './levels';
import { nameOf } from './results';
import './dose.css';

/** The part of the dosing screen that is tapped: what the last drop did, what was asked for, − drop and + drop. */
export function drawDrops(i: number) {
  return (walk: Walk) => <DropButtons walk={walk} i={i} />;
}

function DropButtons({ walk, i }: { walk: Walk; i: number }) {
  const run = walk.state.value;
  const drops = dropsOf(run, i);
  const counter = named('drops', i);
  const taps = useTaps(() => void walk.happen({ type: 'drop', key: counter }));
  const glass = glassAt(run, i, drops);
  return (
    <div class="dosing">
      {glass && (
        <p class="fallen" role="status">
          {fallen(run, glass, i)}
        </p>
      )}
      {glass && <p class="quiet">{beside(glass)}</p>}
      {glass && glass.dosings.at(-1)!.vial.contents.length > 1 && <p class="quiet">{apart(glass)}</p>}
      {glass && <DoseBar levels={levelsOf(run, glass, i)} />}
      <div class="row">
        <button
          class="second minus"
          disabled={drops === 0}
          onClick={() => void walk.happen({ type: 'undo', key: counter })}
        >
          − drop
        </button>
        <button class="plus" {...taps} aria-label={`Plus one drop. ${drops} so far`}>
          + drop
        </button>
      </div>
    </div>
  );
}

function glassAt(run: RunState, i: number, drops: number): Glass | null {
  const glass = attempt(() => glassOf(run, i, drops));
  return glass instanceof Refused ? null : glass;
}

/** "3 of 4 drops · was 7.9 mg/kg" */
function fallen(run: RunState, glass: Glass, i: number): string {
  const { vial } = glass.dosings.at(-1)!;
  const drops = dropsOf(run, i);
  const target = attempt(() => targetOf(run, i));
  const before = drops > 0 ? glassAt(run, i, drops - 1) : null;
  const was = before ? ` · was ${formatMeasured(reachedBy(vial, before.dose).mgPerKg).value} mg/kg` : '';
  if (!target || target instanceof Refused) return `${dropsText(drops)}${was}`;
  return `${drops > target.drops ? `${dropsText(drops)},` : drops} ${ofTarget(drops, target.drops)}${was}`;
}

/** What a drop is taken to weigh, and the alcohol of the whole. */
function beside(glass: Glass): string {
  const { dose, dosings } = glass;
  const isKnown = alcoholIsUnknown(glass).length === 0;
  const drop = dosings.at(-1)!.drop!;
  const kind = drop.calibrated ? 'Your drop' : 'Typical drop, not weighed';
  return `${kind}: ${formatPlain(drop.mgPerDrop.value, 2)} mg · ${isKnown ? `${formatPlain(dose.abv.value, 2)} % ABV` : 'alcohol not known'}`;
}

/** Each material of a blend apart. */
function apart(glass: Glass): string {
  const { vial } = glass.dosings.at(-1)!;
  const own = glass.dose.materials.filter(({ material }) => vial.contents.some((part) => part.material === material));
  return own.map(({ material, mgPerKg }) => `${nameOf(glass, material)} ${formatMeasured(mgPerKg).value}`).join(' · ');
}
