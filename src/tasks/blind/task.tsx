import type { AnyRecord } from '../../records/kind/kinds';
import { newRecord } from '../../records/shelf';
import { attempt, Refused } from '../../workshop/attempt';
import { answer } from '../engine/answers';
import type { RunState } from '../engine/fold';
import type { Step, Task } from '../engine/task';
import { answersOf } from './answers';
import { cardStep, remembers, settled, sheetStep } from './card';
import { designOf, type Design } from './design';
import { attribute, fields, isAlone } from './fields';
import { methodOf } from './methods';
import { outcomeOf } from './outcome';
import { Revealed } from './Revealed';
import { recordOfSample, samplesOfRun, samplesTyped } from './samples';
import { smellNowStep, tastingSteps } from './tasting';
import './blind.css';
import { Refusal } from '../../core/text/refusal';

function revealStep(run: RunState, design: Design): Step {
  const answers = answersOf(run, design);
  const { sentence, more, results } = outcomeOf(design, answers);
  return {
    key: 'reveal',
    say: sentence,
    more,
    results,
    draw: () => <Revealed design={design} answers={answers} />,
    done: 'Save to the Book',
  };
}

function steps(state: RunState): Step[] {
  const run = settled(state);
  const begun = answer(run, fields.locked(0)) !== null; // then the design is fixed: its questions are behind
  const asked = begun ? [] : [cardStep(state)];
  const laid = attempt(() => designOf(run));
  if (laid instanceof Refused || !laid) return [cardStep(state)];
  const answered = answersOf(run, laid).length;
  const before = begun ? [] : [...asked, sheetStep(run, laid)];
  const all = answered === laid.sets.length;
  const stop = all ? null : smellNowStep(run, answered);
  if (stop && !before.some(({ key }) => key === run.at) && isTasting(run)) return [stop];
  return [...before, ...tastingSteps(run, laid), ...(all ? [revealStep(run, laid)] : [])];
}

/** Whether the first cup was reached. */
function isTasting({ at }: RunState): boolean {
  return /^(taste|answer|card|rest|smell-now)(\.|$)/.test(at) && at !== 'card';
}

function keep(state: RunState): AnyRecord[] {
  const run = settled(state);
  const design = designOf(run);
  const answers = design ? answersOf(run, design) : [];
  if (!design || answers.length < design.sets.length) throw new Refusal('Not every set has been answered yet.');
  const { sentence, p } = outcomeOf(design, answers);
  const sources = (samplesOfRun(run) ?? []).map(({ from }) => from && recordOfSample(from));
  const from = [...new Set([...sources, design.drops?.vial].filter((id) => id != null))];
  return [
    newRecord('test', {
      name: nameOf(run),
      from,
      test: design.method.id,
      risk: design.risk,
      served: isAlone(run) ? 'alone' : 'served',
      samples: [...design.samples],
      ...panelFacts(run, design),
      ...(sources.some((id) => id !== null) ? { sources } : {}),
      ...(design.expected ? { expected: [...design.expected] } : {}),
      ...(design.levels.length > 0 ? { steps: [...design.levels], unit: design.unit } : {}),
      sets: design.sets.map(({ cups, card }, i) => ({
        cups: cups.map((cup) => ({ ...cup })),
        ...(card === undefined ? {} : { card }),
        answer: [...answers[i]!.codes],
        ...(answers[i]!.liking.length > 0 ? { liking: [...answers[i]!.liking] } : {}),
      })),
      outcome: sentence,
      p,
    }),
  ];
}

/** Whose nose of a panel it was, and of what there was to be more. */
function panelFacts(run: RunState, { method }: Design): { assessor?: string; attribute?: string } {
  const [id, more] = [answer(run, fields.assessor), answer(run, attribute)];
  const isAsked = method.id === 'paired' || method.id === 'ranking';
  return { ...(id ? { assessor: id } : {}), ...(isAsked && more ? { attribute: more } : {}) };
}

function nameOf(run: RunState): string {
  const method = methodOf(run);
  const names = method ? samplesTyped(run, method).map(({ name }) => name) : [];
  return names.length > 0 ? `${method!.name.split(':')[0]} · ${names.join(', ')}` : 'Blind test';
}

/** What a repeat begins with. */
const repeats = ['test', 'served', 'sample.', 'from.', 'attribute', 'tries', 'risk', 'top', 'levels', 'factor'];

/** Can they tell? Codes, balanced orders, locked answers, and what it means. */
export const blind: Task = { id: 'blind', recorded: true, title: nameOf, steps, keep, remembers, repeats };
