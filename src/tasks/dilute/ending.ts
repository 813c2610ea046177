import { scaled } from '../../core/number/measured';
import { attempt, Refused } from '../../workshop/attempt';
import type { RunState } from '../engine/fold';
import { formatKnown, formatPlain, measuredText } from '../../ui/format';
import type { Result } from '../../ui/controls/result';
import type { Offer } from '../engine/task';
import { answer, ask, supposing, types } from '../engine/answers';
import { strengthWords, twinsOf } from '../../workshop/labelled';
import { dayOfRun } from '../engine/runDay';
import { freeVialCode } from '../../workshop/vialCode';
import { fields, type DiluteStep } from './fields';
import { dilutionUseBy as dilutionUseBy } from './dilutionUseBy';
import { labelOf, madeOf, type Made } from './made';
import { inMl, type Order } from './making';
import { pourStep } from './pouring';
import { gradeOf } from './source';

const OVERSHOOT = 0.02; // our choice: 2 % over the target is worth a word, less is not

/** What came out, the rescue if it is too strong, and the label. */
export function endSteps(run: RunState, order: Order): DiluteStep[] {
  const made = attempt(() => madeOf(run, order));
  const asMixed = attempt(() => madeOf(supposing(run, types(fields.overshoot, 'keep')), order));
  if (made instanceof Refused || asMixed instanceof Refused) return [];
  const rescued = answer(run, fields.overshoot) === 'rescue' && made.rescue !== null;
  const rescue = rescued
    ? [pourStep(run, order, { pour: 'rescue', grams: made.rescue.add, say: 'on top' }), rescuedStep(order, made)]
    : [];
  return [madeStep(order, asMixed, rescued), ...rescue, labelStep(run, order, made)];
}

function madeStep(order: Order, made: Made, rescued: boolean): DiluteStep {
  const strength = strengthText(order, made);
  const calm: DiluteStep = {
    key: 'made',
    say: `It is ‹${strength}›.`,
    more: ['From what was really put in.'],
    results: [strengthResult(order, made)],
  };
  if (made.rescue === null || made.strength.value <= order.target * (1 + OVERSHOOT)) return calm;
  const ml = formatPlain(inMl(order, made.rescue.add), 2);
  const total = made.rescue.total / order.liquid.solventDensity;
  const room = total > order.sizeMl * 1.25 ? ' It will not fit into this vial: pour it into a larger one first.' : '';
  const offers: Offer[] = rescued
    ? [{ words: `Keep it as ${strength}`, type: types(fields.overshoot, 'keep'), leave: true }]
    : [
        {
          words: `Rescue: add ${ml} mL of ${order.solvent.name}`,
          type: types(fields.overshoot, 'rescue'),
          leave: true,
        },
      ];
  return {
    ...calm,
    say: `It came out stronger: ‹${strength}›.`,
    more: [`Keep it as it is, or add ${ml} mL and it is what you asked for.${room}`],
    done: rescued ? 'On to the rescue' : `Keep it as ${strength}`,
    offers,
  };
}

function rescuedStep(order: Order, made: Made): DiluteStep {
  const say = `Now it is ‹${strengthText(order, made)}›.`;
  return { key: 'rescued', say, more: ['From what was really put in.'], results: [strengthResult(order, made)] };
}

function labelStep(run: RunState, order: Order, made: Made): DiluteStep {
  const { supplier, lot } = order.source;
  const usualDay = dayOfRun(run, 'pour.', 'drops', 'material');
  const madeOn = ask(fields.madeOn, { preset: usualDay });
  const day = answer(run, madeOn) ?? usualDay;
  const label = labelOf(run, order, made);
  const code = ask(fields.code, { preset: freeVialCode(order.source.code, label, day) });
  const keeps = dilutionUseBy(run, order, day);
  const useBy = ask(fields.useBy, { preset: keeps.day, help: `${keeps.words}.` });
  const typed = answer(run, code) ?? '';
  return {
    key: 'label',
    say: 'Cap it, swirl it, write the label.',
    more: [
      `‹${typed} ${strengthWords(label)}›`,
      `${order.solvent.name}, ${[supplier, lot && `lot ${lot}`].filter(Boolean).join(', ') || 'no lot'}, ‹${gradeOf(order.source, order.solvent).toUpperCase()}›`,
      ...(keeps.day < day ? ['What it is made from is past its day: smell it against fresh first.'] : []),
      ...(twinsOf(typed, label, day).length === 0
        ? []
        : [`Another ${typed} ${strengthWords(label)} in use was made on that day.`]),
    ],
    ask: [code, madeOn, useBy],
    done: 'Put it on the Shelf',
  };
}

function strengthText(order: Order, made: Made): string {
  return `${formatKnown(made.shown, { most: 3 })} ${order.basis}`;
}

/** The true strength with its ±, and how it was worked out. */
function strengthResult(order: Order, made: Made): Result {
  const { source, solvent, drop, byDrops } = order;
  const inputs = [
    {
      words: `${source.name} put in`,
      text: measuredText(scaled(made.material, 1000), 'mg'),
      source: byDrops ? `drops of ${measuredText(drop.mgPerDrop, 'mg')}: ${drop.source}` : 'weighed',
    },
    { words: 'All together', text: measuredText(made.mass, 'g'), source: 'material and solvent' },
    {
      words: `Density of ${source.name}`,
      text: `${formatPlain(source.density.value)} g/mL at 20 °C`,
      source: source.densitySource,
    },
    {
      words: `Density of ${solvent.name}`,
      text: `${formatPlain(solvent.density.gPerMl)} g/mL at ${solvent.density.atC} °C`,
      source: solvent.density.source,
    },
  ];
  const words = [
    'Mass of neat material over the mass of the dilution; volumes from the densities, added.',
    `Shown as ${order.basis}.`,
  ];
  return { label: 'True strength', amount: made.shown, unit: order.basis, how: { words, inputs } };
}
