import { amount, choice, valueOf, whole, words, type Field } from '../fields';
import type { RunState } from '../fold';

/** A method of tasting blind. */
export interface Method {
  readonly id: 'triangle' | 'duo-trio' | 'paired' | 'preference' | 'ranking' | 'threshold' | 'hedonic';
  readonly name: string;
  readonly more: string;
  /** How a set is answered. */
  readonly question: string;
  /** Tries proposed; one try is one set of cups, for a threshold one run up the ladder. */
  readonly usual: number;
  readonly most: number;
}

export const METHODS: readonly Method[] = [
  {
    id: 'triangle',
    name: 'Triangle',
    more: 'Three cups, one is odd: is there a difference? (ISO 4120)',
    question: 'Which one is odd?',
    usual: 12,
    most: 60,
  },
  {
    id: 'duo-trio',
    name: 'Duo-trio',
    more: 'A reference and two cups: which is like it? (ISO 10399)',
    question: 'Which one is like the reference?',
    usual: 16,
    most: 60,
  },
  {
    id: 'paired',
    name: 'Paired: which has more?',
    more: 'Two cups: the second sample should have more of it (ISO 5495)',
    question: 'Which one has more of it?',
    usual: 12,
    most: 60,
  },
  {
    id: 'preference',
    name: 'Paired: which is liked?',
    more: 'Two cups, no right answer (ISO 5495)',
    question: 'Which one do you like better?',
    usual: 12,
    most: 60,
  },
  {
    id: 'ranking',
    name: 'Ranking',
    more: 'Three to six samples in order (ISO 8587)',
    question: 'From least to most',
    usual: 6,
    most: 30,
  },
  {
    id: 'threshold',
    name: 'Threshold',
    more: 'Weak to strong, three cups each step, one holds it (ASTM E679 type)',
    question: 'Which one holds it?',
    usual: 2,
    most: 6,
  },
  {
    id: 'hedonic',
    name: 'Liking',
    more: 'Two to six samples on the nine-point scale',
    question: 'How do you like it?',
    usual: 4,
    most: 30,
  },
];

/** The method chosen. */
export function methodOf(run: RunState): Method | undefined {
  return METHODS.find(({ id }) => id === run.typed['test']);
}

/** The questions of a blind test. */
export const fields = {
  served: choice({
    name: 'served',
    title: 'Who fills and serves?',
    options: [
      { value: 'alone', words: 'I am alone', more: 'codes go under the cups, you shuffle, and turn them over after' },
      { value: 'served', words: 'Somebody else', more: 'fills and hands over in the order shown' },
    ],
  }),
  sample: (i: number, title: string, optional = false): Field<string> =>
    words({ name: `sample.${i}`, title, max: 40, optional }),
  attribute: words({ name: 'attribute', title: 'More of what?', help: 'Bitter, sweet, grapefruit …', max: 40 }),
  tries: (method: string): Field<number> => {
    const { usual, most } = METHODS.find(({ id }) => id === method) ?? METHODS[0]!;
    return whole({
      name: 'tries',
      title: method === 'threshold' ? 'Runs up the ladder' : method === 'triangle' ? 'Triads' : 'Sets of cups',
      unit: method === 'threshold' ? 'runs' : 'sets',
      min: 1,
      max: most,
      preset: String(usual),
    });
  },
  risk: choice({
    name: 'risk',
    title: 'Risk of calling a difference that is not there',
    preset: '0.05',
    options: [
      { value: '0.05', words: '5 in 100', more: 'usual' },
      { value: '0.01', words: '1 in 100' },
      { value: '0.1', words: '10 in 100', more: 'for a first look' },
    ],
  }),
  top: amount({ name: 'top', title: 'Strongest step', unit: 'mg/kg', above: 0, max: 1e6 }),
  levels: whole({ name: 'levels', title: 'Steps', unit: 'steps', min: 4, max: 10, preset: '6' }),
  factor: choice({
    name: 'factor',
    title: 'From step to step',
    preset: '3',
    options: [
      { value: '2', words: 'times 2' },
      { value: '3', words: 'times 3', more: 'usual' },
    ],
  }),
};

const MOST_SAMPLES = 6;

/** Names of the samples, in order; null until enough are typed and no two are alike. */
export function sampleNames(run: RunState): string[] | null {
  const method = methodOf(run);
  if (!method) return null;
  const asked = method.id === 'ranking' || method.id === 'hedonic' ? MOST_SAMPLES : 2;
  const names = Array.from({ length: asked }, (_, i) => run.typed[`sample.${i}`]?.trim() ?? '').filter(Boolean);
  const enough = method.id === 'ranking' ? 3 : 2;
  return names.length >= enough && new Set(names).size === names.length ? names : null;
}

/** The fields that ask for the samples of a method. */
export function sampleFields({ id }: Method): Field<string>[] {
  if (id === 'paired')
    return [fields.attribute, fields.sample(0, 'Sample with less'), fields.sample(1, 'Sample with more')];
  if (id === 'threshold')
    return [fields.sample(0, 'Plain (the drink alone)'), fields.sample(1, 'What is in the other')];
  if (id !== 'ranking' && id !== 'hedonic') return [fields.sample(0, 'Sample A'), fields.sample(1, 'Sample B')];
  const needed = id === 'ranking' ? 3 : 2;
  const letters = Array.from({ length: MOST_SAMPLES }, (_, i) => String.fromCharCode(65 + i));
  const more = id === 'ranking' ? [fields.attribute] : [];
  return [...more, ...letters.map((letter, i) => fields.sample(i, `Sample ${letter}`, i >= needed))];
}

/** Why the samples will not do yet, or ''. */
export function sampleTrouble(run: RunState, method: Method): string {
  if (sampleNames(run)) return '';
  const typed = Array.from({ length: MOST_SAMPLES }, (_, i) => run.typed[`sample.${i}`]?.trim() ?? '').filter(Boolean);
  if (new Set(typed).size < typed.length) return 'Two samples have the same name.';
  return method.id === 'ranking' ? 'Ranking needs three samples or more.' : 'Two samples at least.';
}

/** The questions on the ladder of a threshold. */
export function ladderFields(): Field[] {
  return [fields.top, fields.levels, fields.factor];
}

/** Whether the taster fills the cups, too. */
export function isAlone(run: RunState): boolean {
  return valueOf(run, fields.served) !== 'served';
}
