import type { RunState } from '../engine/fold';
import { textOf, valueOf } from '../engine/fields';
import type { Step } from '../engine/task';
import { BESIDE_LIMIT, formatLike, formatPlain } from '../../ui/format';
import { dropsText, offWords, ofTarget } from '../../workshop/dropWords';
import { drawCodes } from './DrawCodes';
import { fields } from './fields';
import { vialOf } from './glass';
import { codesOf, factorOf, rungGlass, rungsOf, tastingOrder, type Rung } from './ladder';
import { drawLiking, likingTold } from './Liking';
import { limitsStep } from './limitsStep';
import { reachedResults } from './results';
import { outcome } from '../../workshop/attempt';
import { tagOf } from '../../workshop/thing/labelled';

/** A ladder of glasses: levels, codes, drops, tasting, the best one, and what was in them. */
export function ladderSteps(run: RunState): Step[] {
  const { value: rungs, problem } = outcome(() => rungsOf(run));
  const plan = planStep(run, rungs, problem);
  const blind: Step = { key: 'blind', say: 'Shall the glasses be blind?', ask: [fields.blind] };
  if (!rungs || problem) return [plan];
  const codes = codesOf(run, rungs.length);
  const draw: Step = {
    key: 'codes',
    say: 'Write these codes under the glasses.',
    draw: drawCodes(rungs.length),
    more: ['From the weakest to the strongest. Let somebody else pour, if there is anybody.'],
    ...(codes ? {} : { problem: 'The codes are not drawn yet.' }),
  };
  const before = [plan, blind, ...(run.typed['blind'] === 'yes' ? [draw] : [])];
  if (!codes) return before;
  const strongest = outcome(() => rungGlass(run, rungs.length - 1)).value;
  return [
    ...before,
    ...rungs.map((rung, k) => rungStep(run, { rung, k, code: codes[k]! })),
    limitsStep(run, strongest, 'Read this before you taste the strongest.'),
    ...tastingOrder(run, codes).map((k) => tasteStep(run, { rung: rungs[k]!, k, code: codes[k]! })),
    bestStep(tastingOrder(run, codes).map((k) => codes[k]!)),
    revealStep(run, codes),
  ];
}

function planStep(run: RunState, rungs: readonly Rung[] | null, problem: string | null): Step {
  const same = rungs?.some((rung, k) => k > 0 && rung.drops === rungs[k - 1]!.drops);
  return {
    key: 'ladder',
    say: 'How many glasses, from which level up?',
    more: [
      ...(rungs ?? []).map(
        (rung) =>
          `‹${dropsText(rung.drops)}› for ${formatPlain(rung.target, 3)}: ${reachedText(rung)}, ${offWords(rung.error)}`,
      ),
      ...(same ? ['Two glasses get the same drops: begin higher, or take a weaker vial.'] : []),
    ],
    ask: [
      fields.lowest,
      fields.glasses,
      fields.factor,
      ...(textOf(run, fields.factor) === 'own' ? [fields.ownFactor] : []),
    ],
    ...(problem ? { problem } : same ? { problem: 'Two glasses would be the same.' } : {}),
  };
}

interface Glass {
  readonly rung: Rung;
  readonly k: number;
  readonly code: string;
}

function reachedText({ mgPerKg, known }: Rung): string {
  return `${formatLike(mgPerKg, known, BESIDE_LIMIT)} mg/kg`;
}

function rungStep(run: RunState, { rung, k, code }: Glass): Step {
  const counter = `rung.${k + 1}`;
  const vial = vialOf(run, 1)!;
  return {
    key: counter,
    say: `‹${dropsText(rung.drops)}› of ${tagOf(vial)} into glass ‹${code}›.`,
    pad: {
      counter,
      target: rung.drops,
      live: (drops) => (drops === rung.drops ? reachedText(rung) : ofTarget(drops, rung.drops)),
    },
    ...((run.drops[counter] ?? 0) === 0 ? { problem: 'No drop has fallen yet.' } : {}),
  };
}

function tasteStep(run: RunState, { rung, k, code }: Glass): Step {
  const blind = run.typed['blind'] === 'yes';
  return {
    key: `taste.${k + 1}`,
    say: `Taste glass ‹${code}›.`,
    more: [
      blind
        ? 'A sip, water, and half a minute of rest.'
        : `About ${formatPlain(rung.target, 3)} mg/kg. A sip, water, and half a minute of rest.`,
    ],
    ask: [fields.note(k + 1)],
    draw: drawLiking(`liking.${k + 1}`),
    told: likingTold(run, `liking.${k + 1}`),
  };
}

function bestStep(codes: readonly string[]): Step {
  return { key: 'best', say: 'Which glass was the best?', ask: [fields.best(codes)] };
}

function revealStep(run: RunState, codes: readonly string[]): Step {
  const best = valueOf(run, fields.best(codes));
  return {
    key: 'reveal',
    say: best === null || best === 'none' ? 'This was in them.' : `Glass ‹${best}› was the best.`,
    more: [`Each ${formatPlain(factorOf(run) ?? 0)} times the one before, as near as whole drops come.`],
    results: codes.flatMap((code, k) => {
      const glass = outcome(() => rungGlass(run, k)).value;
      const [perKg] = glass ? reachedResults(glass) : [];
      const liking = run.typed[`liking.${k + 1}`];
      const label = [`Glass ${code}`, best === code && 'the best', liking && `liking ${liking}`]
        .filter(Boolean)
        .join(' · ');
      return perKg ? [{ ...perKg, label }] : [];
    }),
    done: 'Keep',
  };
}
