import { list, shelf } from '../../records/shelf';
import type { Supply } from '../../records/kind/supply';
import { labelSays } from '../../workshop/grade';
import { dropperOptions, solventBottleOptions, solventOptions } from '../../workshop/onHand';
import { answer, ask, types } from '../engine/answers';
import type { RunState } from '../engine/fold';
import { newBottleSteps } from '../shared/newBottle';
import type { Offer } from '../engine/task';
import { attempt, Refused } from '../../workshop/attempt';
import { endSteps } from './ending';
import { fields, sourceOptions, type DiluteStep } from './fields';
import { liquidOf, orderOf, strengthOf, targetOf } from './making';
import { makingSteps } from './pouring';
import { isSet, pickSetStep, setPlanStep } from './set';
import { solventBottleOf, solventOf, sourceOf } from './source';

/** The steps of a dilution, as far as what is known reaches. */
export function steps(run: RunState): DiluteStep[] {
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
  const several: Offer[] =
    list('bottle').length > 1 ? [{ words: 'Several at once', type: types(fields.set, 'yes') }] : [];
  const first: DiluteStep = {
    key: 'bottle',
    say: 'What will you thin?',
    ask: [ask(fields.source, { options: sourceOptions() })],
    offers: several,
  };
  const fresh = answer(run, fields.source) === 'new' ? newBottleSteps(run) : [];
  const order = attempt(() => orderOf(run));
  if (isExact(run) && order && !(order instanceof Refused))
    return [
      ...solventSteps(run).filter(({ key }) => key === 'food'),
      ...makingSteps(run, order).filter(({ key }) => key !== 'plan'),
      ...endSteps(run, order),
    ];
  return [
    first,
    ...fresh,
    strengthStep(run),
    ...vialSteps(run),
    ...solventSteps(run),
    ...waySteps(run, source?.solid ?? false),
    ...(order && !(order instanceof Refused) ? [...makingSteps(run, order), ...endSteps(run, order)] : []),
  ];
}

/** Whether a vial made before is made exactly again: nothing is planned, and nothing is asked but what is fit for drinks. */
function isExact(run: RunState): boolean {
  return answer(run, fields.exactSource) !== null && answer(run, fields.exactSolvent) !== null;
}

function strengthStep(run: RunState): DiluteStep {
  const basis = ask(fields.basis, { preset: shelf.settings.value.basis });
  const source = sourceOf(run);
  const tried =
    source && strengthOf(run) !== null ? attempt(() => targetOf(run, source, liquidOf(source, solventOf(run)))) : null;
  const problem = tried instanceof Refused ? tried.problem : undefined;
  return {
    key: 'strength',
    say: `How strong shall ${source?.name ?? 'it'} become?`,
    more: ['1 % to smell most materials, 0.1 % for the strong ones (common practice).'],
    ask: [fields.strength(answer(run, basis) ?? '% w/v'), basis],
    ...(problem ? { problem } : {}),
  };
}

function vialSteps(run: RunState): DiluteStep[] {
  const own: DiluteStep = { key: 'own-size', say: 'How large is the vial?', ask: [fields.ownSize] };
  return [
    { key: 'size', say: 'Which vial?', ask: [fields.size] },
    ...(answer(run, fields.size) === 'own' ? [own] : []),
  ];
}

function solventSteps(run: RunState): DiluteStep[] {
  const solvent = solventOf(run);
  const own = answer(run, fields.solvent) === 'new';
  const options = [...solventBottleOptions(), ...solventOptions(), { value: 'new', label: 'Another solvent' }];
  const named: DiluteStep = {
    key: 'own-solvent',
    say: 'What is the solvent?',
    ask: [fields.solventName, fields.solventDensity, fields.solventFlash],
  };
  const graded: DiluteStep = {
    key: 'food',
    say: 'Is the solvent food grade?',
    more: ['Denatured alcohol must never reach a drink: read the label.'],
    ask: [fields.food],
  };
  return [
    { key: 'solvent', say: 'Which solvent?', ask: [ask(fields.solvent, { options })] },
    ...(own ? [named] : []),
    ...(own || (solvent?.foodPossible && isAsked(solventBottleOf(run))) ? [graded] : []),
  ];
}

/** Whether the label of the bottle, if one was chosen, does not say it. */
function isAsked(bottle: Supply | undefined): boolean {
  return bottle === undefined || labelSays(bottle) === null;
}

function waySteps(run: RunState, solid: boolean): DiluteStep[] {
  const byDrops = answer(run, fields.way) === 'drops' && !solid;
  const scale = answer(run, fields.measure) === 'scale' || answer(run, fields.way) === 'mass' || solid;
  const weighedOnly = [{ value: 'mass', label: 'On a scale', hint: 'a solid is weighed, never counted in drops' }];
  const dropper: DiluteStep = {
    key: 'dropper',
    say: 'Which dropper?',
    ask: [ask(fields.dropper, { options: dropperOptions() })],
  };
  return [
    { key: 'measure', say: 'How do you measure the solvent?', ask: [fields.measure] },
    {
      key: 'way',
      say: 'How do you measure the material?',
      ask: [ask(fields.way, solid ? { options: weighedOnly } : {})],
    },
    ...(byDrops ? [dropper] : []),
    ...(scale ? [{ key: 'scale', say: 'Which scale?', ask: [fields.readability] } as const] : []),
  ];
}
