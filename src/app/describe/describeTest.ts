import type { RecordOf } from '../../records/kind/kinds';
import { resultsOfTest } from '../../tasks/blind/kept';
import { formatChance, formatPlain } from '../../ui/format';
import { facts, type Description } from './description';

type Test = RecordOf<'test'>;

/** A blind test in words: what came out, how it was done, every set. */
export function describeTest(r: Test): Description {
  return {
    title: r.name,
    line: r.outcome,
    facts: facts(
      ['Outcome', r.outcome],
      ['Chance by guessing', r.p === null ? undefined : formatChance(r.p)],
      ['Risk chosen', r.steps ? undefined : `${formatPlain(r.risk * 100)} %`],
      ['Served', r.served === 'alone' ? 'alone, shuffled by hand' : 'by someone else'],
      ['Nose', r.assessor],
      ['More of what', r.attribute],
      ['Order expected', r.expected?.map((sample) => r.samples[sample]).join(' < ')],
      ['Series', r.steps && `${r.steps.map((step) => formatPlain(step, 3)).join(', ')} ${r.unit ?? ''}`],
      ...r.sets.map((set, i) => [`Set ${i + 1}`, setText(r, set)] as const),
    ),
    get results() {
      return resultsOfTest(r); // only where they are shown: lists would wait for them
    },
  };
}

function setText({ samples }: Test, { cups, answer, liking, card }: Test['sets'][number]): string {
  const name = (code: number): string => samples[cups.find((cup) => cup.code === code)?.sample ?? -1] ?? '?';
  const inside = cups.map(({ code }) => `${code === 0 ? 'R' : code} ${name(code)}`).join(', ');
  const told = answer.map((code, k) => (liking ? `${name(code)} liked ${liking[k]}` : `${code}`)).join(', ');
  return `${card === undefined ? '' : `card ${card}: `}${inside}; answer: ${told}`;
}
