import { planReadings } from '../../core/drop/dropAdvice';
import { list, shelf } from '../../records/shelf';
import type { Calibration } from '../../records/kind/dropper';
import type { Option } from '../../ui/controls/field';
import { solventsOnHand } from '../../workshop/onHand';
import { usualStep } from '../../workshop/scales';
import { dropOf } from '../../workshop/dropMass';
import { answer, ask } from '../engine/answers';
import { amount, choice, given, optionalAmount, pick, whole, words } from '../engine/fields';
import type { RunState } from '../engine/fold';
import { asBefore, lastTime, type Answers } from '../engine/lastTime';
import { oncePerRun } from '../engine/oncePerRun';

/** A drop known to ± 5 % (95 %), as closely as the drops themselves scatter; our choice. */
export const WANTED = 0.05;
const MOST = 100; // our choice: more are not counted without a slip
const DROPS = 20; // our choice, as the pharmacopoeial test does (Ph. Eur. 2.1.1)

/** The questions of a calibration. */
export const fields = {
  dropper: pick({ name: 'dropper', title: 'Dropper' }),
  newName: words({ name: 'newName', title: 'Name on the dropper', max: 30 }),
  newTip: words({ name: 'newTip', title: 'Its tip', optional: true, max: 60, preset: '' }),
  outlet: choice({
    name: 'newOutlet',
    title: 'Tip of the dropper',
    options: [
      { value: 'square tip', label: 'A tube cut square', hint: 'glass dropper, pipette', short: 'a tube cut square' },
      { value: 'lip or insert', label: 'A bottle lip or drop insert', short: 'a lip or insert' },
    ],
  }),
  liquid: pick({ name: 'liquid', title: 'Liquid' }),
  each: whole({ name: 'each', title: 'Drops each time', unit: 'drops each', min: 1, max: 1000 }),
  readability: amount({ name: 'readability', title: 'Readability of the scale', unit: 'g', above: 0, max: 1 }),
  temperature: optionalAmount({ name: 'temperature', title: 'Room', unit: '°C', min: 0, max: 40 }),
  drops: (i: number) => whole({ name: `drops.${i}`, title: 'Drops', unit: 'drops', min: 1, max: 1000 }),
  mass: (i: number) =>
    amount({ name: `mass.${i}`, title: `Weighing ${i}`, unit: 'g', above: 0, max: 100, weighed: true }),
  /** A weighing that the person leaves out. */
  out: (i: number) => given(`out.${i}`, ['yes']),
};

/** What the next calibration begins with. */
export const remembers = [fields.dropper, fields.liquid, fields.each, fields.readability].map(({ name }) => name);

/** The questions as they are asked now: as last time, else as the bench usually does. */
export const asked = oncePerRun((run: RunState) => {
  const [last] = list('calibration');
  const before = [lastTime(list('calibration')), last ? factsOf(last) : {}];
  const room = shelf.settings.value.roomC;
  const dropper = asBefore(run, ask(fields.dropper, { options: droppers() }), before, droppers()[0]!.value);
  const liquid = asBefore(run, ask(fields.liquid, { options: liquids() }), before, 'ethanol-96');
  const readability = asBefore(run, fields.readability, before, usualStep());
  return {
    dropper,
    newName: asBefore(run, fields.newName, [], freeName()),
    outlet: asBefore(run, fields.outlet, [], 'square tip'),
    liquid,
    each: asBefore(run, fields.each, before, String(enough(answer(run, liquid), answer(run, readability)))),
    readability,
    temperature: asBefore(run, fields.temperature, [], room === undefined ? '' : String(room)),
  };
});

/** Drops each time that three weighings need for a drop known well enough, on this scale (g); a first guess at the drop is enough for it. */
function enough(id: string | null, readabilityG: number | null): number {
  const { mgPerDrop, spread } = expectedDrop(id);
  const scale = { readabilityG: readabilityG ?? 0.01 };
  const plan = planReadings({ mgPerDrop: mgPerDrop.value, perDropSpread: spread, scale, wanted: WANTED });
  return plan ? Math.max(DROPS, plan.drops) : MOST;
}

/** A first guess at the drop of a liquid, by its id. */
export function expectedDrop(id: string | null): ReturnType<typeof dropOf> {
  const liquid = solventsOnHand().find((solvent) => solvent.id === id)?.liquid ?? null;
  return dropOf('', { id: id ?? '', liquid, strength: 1 });
}

/** What a calibration of the first version tells of how it was asked. */
function factsOf({ dropper, liquid, readabilityG }: Calibration): Answers {
  return {
    [fields.dropper.name]: dropper,
    [fields.liquid.name]: liquid.id,
    [fields.readability.name]: String(readabilityG),
  };
}

/** Droppers on the Shelf, and a new one. */
function droppers(): Option[] {
  const own = list('dropper').map(({ id, name, tip }) => ({ value: id, label: name, hint: tip }));
  return [...own, { value: 'new', label: 'A new dropper', short: 'a new dropper', always: true }];
}

/** P1, P2, …: the first that no dropper has. */
function freeName(): string {
  const taken = new Set(list('dropper').map(({ name }) => name));
  for (let i = 1; ; i++) if (!taken.has(`P${i}`)) return `P${i}`;
}

/** What a drop can be weighed of: solvents, and materials that are liquid. */
export function liquids(): Option[] {
  const neat = list('material').filter(({ form }) => form !== 'solid');
  return [
    ...solventsOnHand().map(({ id, name }) => ({
      value: id,
      label: name,
      group: 'Solvents: for their dilutions up to about 1 % too',
    })),
    ...neat.map(({ id, name }) => ({ value: id, label: name, group: 'Neat materials: for themselves' })),
  ];
}
