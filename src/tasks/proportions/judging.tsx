import { closenessWords, Liking, likingWords, OwnScale } from '../../ui/controls/Scale';
import { formatPlain } from '../../ui/format';
import { dropsText, ofTarget } from '../../workshop/dropWords';
import { answer, types } from '../engine/answers';
import type { RunState } from '../engine/fold';
import type { Step, Walk } from '../engine/task';
import { restHint } from '../shared/rest';
import { dropsHeading, dropsWords, LEAST } from './blends';
import { fields, type Laid } from './fields';
import { Had } from './Had';
import { askedDrops, givenDrops, judgedCount, laidIn } from './search';
import { settled } from './asked';
import '../shared/codeList.css';

/** What is asked of each blend; '' for how it is liked. */
export function questionOf(run: RunState): string {
  return answer(settled(run), fields.asked) === 'own' ? (answer(settled(run), fields.idea) ?? '') : '';
}

/** How many blends a session has. */
function sessionOf(run: RunState): number {
  return answer(settled(run), fields.session) ?? 6;
}

/** The steps of one blend, in their order: the session before it is over, what is made, its drops on the pad, and the judging. */
export function blendSteps(run: RunState, n: number): Step[] {
  const laid = laidIn(run)!;
  const session = sessionOf(run);
  const blind = laid.blends[n]?.code !== undefined;
  return [
    ...(n > 0 && n % session === 0 ? [restStep(run, n)] : []),
    ...(blind && n % session === 0 ? [makeStep(laid, n, session)] : []),
    ...(!blind && answer(run, fields.pad) === 'yes' ? padSteps(run, laid, n) : []),
    judgeStep(run, laid, n),
  ];
}

function restStep(run: RunState, n: number): Step {
  return {
    key: `rest.${n}`,
    say: `${sessionOf(run)} blends: enough for this session.`,
    more: [
      'Pause under ⋯ and continue another day: your likings are saved.',
      'You can continue now; a tired nose tells blends apart less well.',
    ],
    done: 'Continue',
  };
}

/** All blends of a session, made before the first of them is smelled, each under its code. */
function makeStep({ blends, vials }: Laid, n: number, session: number): Step {
  const all = blends.slice(n, n + session).sort((one, other) => one.code! - other.code!); // not as they are smelled
  return {
    key: `make.${n}`,
    say: 'Make these, write the codes on, and mix them up.',
    draw: () => (
      <ol class="code-list">
        {all.map(({ drops, code }) => (
          <li>
            <b class="code">{code}</b> {dropsWords(drops, vials)}
          </li>
        ))}
      </ol>
    ),
    done: 'All made',
  };
}

function padSteps(run: RunState, { vials }: Laid, n: number): Step[] {
  return (askedDrops(run, n) ?? []).flatMap((target, k) => {
    if (target === 0) return [];
    const { id, tag } = vials[k]!;
    return {
      key: `drop.${n}.${k}`,
      say: `‹${dropsText(target)}› of ${tag}`,
      more: [`Blend ${n + 1}: ${dropsWords(askedDrops(run, n)!, vials)}`],
      pad: { counter: `${n}.${k}`, target, live: (count) => ofTarget(count, target), expects: { id, tag } },
      offers: [{ words: 'Without the pad', type: types(fields.pad, 'no'), go: `judge.${n}`, place: 'more' as const }],
    };
  });
}

function judgeStep(run: RunState, laid: Laid, n: number): Step {
  const { code } = laid.blends[n] ?? {};
  const given = givenDrops(run, n)!;
  const liking = answer(run, fields.liking(n));
  const words = questionOf(run) === '' ? likingWords : closenessWords;
  return {
    key: `judge.${n}`,
    say: code === undefined ? `‹${dropsHeading(given, laid.vials)}›` : `Smell ‹${code}›.`,
    more: [placeWords(laid, n), ...(n === 0 && code === undefined ? [howWords(run)] : [])],
    draw: (walk) => <Beside walk={walk} n={n} />,
    ...(liking === null ? { foot: (walk: Walk) => <Judging walk={walk} n={n} /> } : {}),
    told: liking === null ? [] : [['Liking', `${formatPlain(liking)} of 9, ${words(liking)}`]],
    ...(liking === null ? { problem: 'Tap how it is: one touch, and the next blend comes.' } : {}),
    offers: code === undefined ? waysOf(run, n) : [],
    done: 'Next',
  };
}

function placeWords({ blends }: Laid, n: number): string {
  return n < blends.length ? `Blend ${n + 1} of ${blends.length}` : `Blend ${n + 1}, proposed`;
}

function howWords(run: RunState): string {
  return answer(settled(run), fields.on) === 'vial'
    ? 'Drop them into an empty vial and swirl; smell it, or a strip dipped into it. The same way each time.'
    : 'Drop them on one fresh strip and let it dry as long as the others. The same way each time.';
}

/** What is rarely wanted of a blend: to count it on the pad, and to see how it stands before all are judged. */
function waysOf(run: RunState, n: number): NonNullable<Step['offers']> {
  const judged = judgedCount(run);
  const pad = (askedDrops(run, n) ?? []).findIndex((count) => count > 0);
  return [
    ...(answer(run, fields.pad) === 'yes'
      ? []
      : [{ words: 'Count on the pad', type: types(fields.pad, 'yes'), go: `drop.${n}.${pad}` }]),
    ...(judged >= LEAST ? [{ words: 'Results so far', place: 'more' as const, go: `look.${judged}` }] : []),
  ];
}

/** What is beside the scale: a rest for the nose, other drops than were asked for, and the liking once it is there. */
function Beside({ walk, n }: { walk: Walk; n: number }) {
  const run = walk.state.value;
  const judged = answer(run, fields.liking(n)) !== null;
  const hint = restHint(smelledAt(run), Date.now());
  return (
    <>
      {hint && !judged && <p class="quiet">{hint}</p>}
      {judged && <Judging walk={walk} n={n} />}
      <details class="fold">
        <summary>Dropped something else?</summary>
        <div class="folded">
          <Had walk={walk} n={n} />
        </div>
      </details>
    </>
  );
}

/** The scale of a blend: one touch stores it, then the next blend is shown. */
function Judging({ walk, n }: { walk: Walk; n: number }) {
  const run = walk.state.value;
  const question = questionOf(run);
  const props = {
    chosen: answer(run, fields.liking(n)),
    onChoose: async (text: string) => {
      if (!(await walk.happen({ type: 'typed', key: fields.liking(n).name, text })) || text === '') return;
      const next = walk.steps.peek()[walk.index.peek() + 1];
      if (next) await walk.goTo(next.key, true);
    },
  };
  return <div class="way-on">{question === '' ? <Liking {...props} /> : <OwnScale title={question} {...props} />}</div>;
}

/** When blends were judged, ms since 1970. */
function smelledAt(run: RunState): number[] {
  return Object.entries(run.done).flatMap(([key, at]) => (key.startsWith('judge.') ? Date.parse(at) : []));
}
