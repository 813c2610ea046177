import { panelPower, type PanelResult } from '../../core/sensory/panel';
import type { Test } from '../../records/kind/test';
import { formatChance, formatPlain, formatShare } from '../../ui/format';
import { panelOutcome, type PanelOutcome } from '../../workshop/sensory/panel';
import { Facts } from '../describe/Facts';

type Fact = readonly [label: string, text: string, more?: string];

/** What all noses of a panel show together, each of them once however often it tried; nothing outside of a panel. */
export function Panel({ test }: { test: Test }) {
  const outcome = panelOutcome(test);
  if (!outcome) return null;
  const { noses } = outcome;
  return (
    <section>
      <h2>The panel</h2>
      <p>
        <b>{sentenceOf(outcome)}</b>
      </p>
      <Facts facts={factsOf(outcome)} stacked />
      <p class="quiet">
        {noses.length === 1
          ? 'One nose says nothing of others: “Next nose” begins the same test for another.'
          : 'Repeats of one nose are kept together and count as that nose, never as others.'}
      </p>
    </section>
  );
}

function sentenceOf(outcome: PanelOutcome): string {
  const { noses } = outcome;
  const many = noses.length === 1 ? '1 nose' : `${noses.length} noses`;
  if (outcome.kind === 'ordered') {
    const order = outcome.samples.map((name, i) => ({ name, mean: outcome.means[i]! })).sort((a, b) => a.mean - b.mean);
    const told = order.map(({ name, mean }) => `${name} ${formatPlain(mean, 3)}`).join(', ');
    return `${many}, from least to most: ${told}.`;
  }
  const { right, tries } = outcome.result;
  return `${many}, ${right} of ${tries} right.`;
}

function factsOf(outcome: PanelOutcome): Fact[] {
  if (outcome.kind === 'ordered')
    return [
      ['By chance alone', formatChance(outcome.p), 'Friedman’s test (ISO 8587), each nose one row of its means'],
      ['Sessions', outcome.noses.map(({ id, sessions }) => `${id}: ${sessions.length}`).join(', ')],
    ];
  const { noses, result } = outcome;
  const each = noses.map(({ id, right, tries, sessions }) => {
    const many = sessions.length === 1 ? '' : ` in ${sessions.length} sessions`;
    return `${id} ${right} of ${tries}${many}`;
  });
  return [['Each nose', each.join('; ')], ...resultFacts(result), ...powerFacts(result, outcome.guess, outcome.risk)];
}

const SHARE = 0.4; // of people that always tell them, for which the power is said: our choice

/** What such a panel would find, and what more noses or more tries would add. */
function powerFacts({ noses, tries }: PanelResult, guess: number, risk: number): Fact[] {
  if (noses < 2) return [];
  const each = tries / noses;
  const at = (n: number, m: number) => formatShare(panelPower({ noses: n, tries: m, guess, risk }, SHARE), 2);
  const more = `with twice the noses ${at(2 * noses, each)}, with twice the tries of each ${at(noses, 2 * each)}`;
  return [
    [
      'Power of such a panel',
      `${at(noses, each)}; ${more}`,
      'chance of showing a difference that 4 of 10 people always detect and the others guess; an estimate by means of noses',
    ],
  ];
}

function resultFacts({ byGuessing, ofPeople, share, likeness, worth, noses, tries }: PanelResult): Fact[] {
  const guessing: Fact = [
    'If none of these noses could tell',
    formatChance(byGuessing),
    'exact binomial over all tries: where no one can tell, every try is a guess, whoever makes it (Kunert and Meyners 1999, from memory)',
  ];
  if (ofPeople === null || share === null) return [guessing];
  const method =
    tries === noses ? 'exact binomial, one try a nose' : 'mean of the noses’ shares, t from the scatter between them';
  return [
    guessing,
    ['If people on average only guess', formatChance(ofPeople), method],
    [
      'Detected beyond guessing',
      `${formatShare(share.value)}; 95 % limits ${formatShare(share.low)} to ${formatShare(share.high)}`,
      method,
    ],
    ...(tries > noses
      ? [
          [
            'Worth of the tries',
            `as ${formatPlain(worth, 2)} noses with one try each`,
            `${tries} tries; likeness of the tries of one nose ${formatPlain(likeness, 2)}, by moments as in the beta-binomial (Ennis and Bi 1998, from memory)`,
          ] as const,
        ]
      : []),
  ];
}
