import { textOf } from '../engine/fields';
import type { RunState } from '../engine/fold';
import { newBottleSteps } from '../shared/newBottle';
import { list } from '../../records/shelf';
import type { Offer, Step } from '../engine/task';
import { attempt } from '../../workshop/attempt';
import { endSteps } from './ending';
import { fields } from './fields';
import { liquidOf, orderOf, strengthOf, targetOf } from './making';
import { makingSteps } from './pouring';
import { isSet, pickSetStep, setPlanStep } from './set';
import { solventBottleOf, solventOf, sourceOf } from './source';

/** The steps of a dilution, as far as what is known reaches. */
export function steps(run: RunState): Step[] {
  const source = sourceOf(run);
  if (isSet(run))
    return [
      pickSetStep(run),
      strengthStep(run),
      ...vialSteps(run),
      ...solventSteps(run),
      ...waySteps(run, false),
      setPlanStep(run),
    ];
  const several: Offer[] = list('bottle').length > 1 ? [{ words: 'Several at once', type: { set: 'yes' } }] : [];
  const first: Step = { key: 'bottle', say: 'What will you thin?', ask: [fields.source()], offers: several };
  const fresh = run.typed['bottle'] === 'new' ? newBottleSteps(run) : [];
  const order = attempt(() => orderOf(run));
  return [
    first,
    ...fresh,
    strengthStep(run),
    ...vialSteps(run),
    ...solventSteps(run),
    ...waySteps(run, source?.solid ?? false),
    ...(order && !('problem' in order) ? [...makingSteps(run, order), ...endSteps(run, order)] : []),
  ];
}

function strengthStep(run: RunState): Step {
  const source = sourceOf(run);
  const tried =
    source && strengthOf(run) !== null ? attempt(() => targetOf(run, source, liquidOf(source, solventOf(run)))) : null;
  const problem = tried && typeof tried === 'object' && 'problem' in tried ? tried.problem : undefined;
  return {
    key: 'strength',
    say: `How strong shall ${source?.name ?? 'it'} become?`,
    more: ['1 % to smell most materials, 0.1 % for the strong ones (common practice).'],
    ask: [fields.strength(textOf(run, fields.basis())), fields.basis()],
    ...(problem ? { problem } : {}),
  };
}

function vialSteps(run: RunState): Step[] {
  const own: Step = { key: 'own-size', say: 'How large is the vial?', ask: [fields.ownSize] };
  return [{ key: 'size', say: 'Which vial?', ask: [fields.size] }, ...(run.typed['size'] === 'own' ? [own] : [])];
}

function solventSteps(run: RunState): Step[] {
  const solvent = solventOf(run);
  const own = run.typed['solvent'] === 'new';
  const ask = [fields.solventName, fields.solventDensity, fields.solventFlash];
  return [
    { key: 'solvent', say: 'Which solvent?', ask: [fields.solvent()] },
    ...(own ? [{ key: 'own-solvent', say: 'What is the solvent?', ask }] : []),
    ...(own || (solvent?.foodPossible && !solventBottleOf(run)?.grade)
      ? [
          {
            key: 'food',
            say: 'Is the solvent food grade?',
            more: ['Denatured alcohol must never reach a drink: read the label.'],
            ask: [fields.food],
          },
        ]
      : []),
  ];
}

function waySteps(run: RunState, solid: boolean): Step[] {
  const byDrops = run.typed['way'] === 'drops' && !solid;
  const scale = run.typed['measure'] === 'scale' || run.typed['way'] === 'mass' || solid;
  return [
    { key: 'measure', say: 'How do you measure the solvent?', ask: [fields.measure] },
    { key: 'way', say: 'How do you measure the material?', ask: [fields.way(solid)] },
    ...(byDrops ? [{ key: 'dropper', say: 'Which dropper?', ask: [fields.dropper()] }] : []),
    ...(scale ? [{ key: 'scale', say: 'Which scale?', ask: [fields.readability] }] : []),
  ];
}
