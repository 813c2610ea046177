import { formatPlain, measuredText } from '../../ui/format';
import { outcome } from '../../workshop/attempt';
import { numberedBatchCode } from '../../workshop/thing/vialCode';
import type { RunState } from '../engine/fold';
import type { Step } from '../engine/task';
import { although, asksWhy, toldWhy } from '../shared/goingOn';
import { usualName } from './keep';
import { leftFields, leftWords } from './leftOver';
import { dangersOf } from './keeping/keepPart';
import { fields } from './plan/fields';
import { doseIn, judgeDrink, madeOf, type Making } from './progress';
import { abvWords, drinkResults } from './results';
import { ringFields, ringTrialWords } from './ringTrial';
import { rulesOffer, withRules } from './rules';

/** The drink in numbers as it was weighed, then what the rules say of it and under which name it is saved. */
export function endSteps(run: RunState, making: Making): Step[] {
  const { value: made } = outcome(() => madeOf(making));
  return [
    {
      key: 'result',
      say: 'This is the drink.',
      more: made ? abvWords(making, made) : [],
      results: made ? drinkResults(making, made) : [],
      ...(made ? {} : { problem: 'Something is not weighed yet: go back and fill in what is missing.' }),
      done: 'Next',
    },
    nameStep(run, making),
  ];
}

function nameStep(run: RunState, making: Making): Step {
  const { value: made } = outcome(() => madeOf(making));
  const isShown = run.at === 'name' || run.at === 'checked'; // the first version had two steps
  const { value: judgement } = outcome(() => (isShown && made ? judgeDrink(run, making.plan, made) : null));
  const { problem } = asksWhy(run, judgement);
  const [name, left] = [fields.name(usualName(run)), [...leftFields(run, making), ...ringFields(run, making)]];
  const rest = left.map((field) => `{${field.name}}`).join(', ');
  const big = made ? measuredText(made.litres, 'L') : '';
  const dangers = dangersOf(run);
  return {
    key: 'name',
    say: 'What is it called?',
    ask: [name, fields.notes, ...left],
    rows: [although],
    card: {
      sentence: rest ? `Save it as {name}, ${rest}` : 'Save it as {name}',
      slots: { notes: { missing: 'notes', optional: true } },
      chips: ['notes'],
      ...(dangers.length > 0 ? { advice: { words: dangers.join(' ') } } : {}),
      ...(made
        ? {
            answer: withRules({ big, lines: [`with ${formatPlain(doseIn(made), 3)} mg/kg of the formula`] }, judgement),
          }
        : {}),
    },
    more: [
      `Write ‹${numberedBatchCode()}›, the name and today’s date on every bottle of it.`,
      ...leftWords(making),
      ...ringTrialWords(run, making),
    ],
    told: toldWhy(run, judgement),
    offers: rulesOffer(judgement),
    ...(problem ? { problem } : {}),
    done: 'Save',
  };
}
