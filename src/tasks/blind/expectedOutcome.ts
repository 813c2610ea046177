import { leastPageL, page } from '../../core/sensory/pageTest';
import { formatPlain } from '../../ui/format';
import type { Result } from '../../ui/controls/result';
import type { Design } from './design';
import { answersInput, chanceResult, chanceText, counted, riskInput, type Input, type Outcome } from './words';

/** Whether a ranking follows the order that was expected before the first sip (Page’s test). Rows hold the rank of each sample. */
export function expectedOutcome(design: Design, rows: readonly (readonly number[])[]): Outcome {
  const order = design.expected!;
  const names = order.map((sample) => design.samples[sample]!).join(' < ');
  const { l, exact, normal } = page(rows.map((row) => order.map((sample) => row[sample]!)));
  const least = leastPageL(rows.length, order.length, design.risk);
  const shown = exact <= design.risk;
  const inputs: Input[] = [
    { words: 'Order expected', text: names, source: 'said before the first sip' },
    answersInput('Sessions', String(rows.length)),
    answersInput('Page’s L', formatPlain(l, 6)),
    {
      words: 'Smallest L that shows it',
      text: least === null ? 'none: too few sessions' : String(least),
      source: 'counted',
    },
    { words: 'The chance by the normal bound', text: formatPlain(normal, 4), source: 'ISO 8587' },
    riskInput(design.risk),
  ];
  const short = least === null ? 'so few sessions cannot show it' : `L is ${formatPlain(l, 6)}, ${least} was needed`;
  return {
    sentence: shown ? `The order you expected is there: ${names}.` : `The order you expected is not shown: ${short}.`,
    more: [`By chance alone they follow it so closely in ${chanceText(exact)} such tests.`],
    results: [
      chanceResult(
        exact,
        [
          'Page’s test, one-sided: so large an L, or larger, if every order of every session were as likely. Every order counted.',
        ],
        inputs,
      ),
      lResult(l, inputs),
    ],
    p: exact,
  };
}

function lResult(l: number, inputs: readonly Input[]): Result {
  const words = [
    'Page’s L: the sum of ranks of each sample times its place in the order expected, 1 for the lowest; all added up. The larger, the nearer to that order.',
  ];
  return { label: 'Page’s L', amount: counted(l), unit: '', how: { words, inputs } };
}
