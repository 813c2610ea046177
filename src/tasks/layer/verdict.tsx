import { choice, words } from '../engine/fields';
import type { RunState } from '../engine/fold';
import type { Step, Walk } from '../engine/task';
import { readingsOf } from './readings';
import { likingWords, Scale } from '../shared/Scale';
import { codesOf, inFan, shortCodes, stripsOf, type Strip } from './strips';
import { setsOf, type SmelledSet } from './tries';

export const decisionField = choice({
  name: 'verdict.decision',
  title: 'What now?',
  options: [
    { value: 'keep', label: 'Keep', hint: 'worth a formula' },
    { value: 'try again', label: 'Try again', hint: 'other dips, another strip' },
    { value: 'drop', label: 'Drop', hint: 'not these together' },
  ],
});
export const verdictWords = words({ name: 'verdict.words', title: 'In your words', optional: true, max: 500 });

/** What a verdict can be about: the fan, and whatever was read together; best liked first, the fan before its equals. */
export function candidates(run: RunState): SmelledSet[] {
  const fan = { vials: inFan(run).map(({ vial }) => vial.id), liking: null };
  const sets = setsOf([fan, ...readingsOf(run)]);
  return sets.sort((a, b) => (b.liking ?? 0) - (a.liking ?? 0));
}

/** The strips the verdict is about: those chosen, else the best liked together. */
export function judged(run: RunState): Strip[] {
  const all = candidates(run);
  const chosen = all.find(({ vials }) => vials.join(' ') === run.typed['verdict.vials']) ?? all[0];
  return stripsOf(run).filter(({ vial }) => chosen?.vials.includes(vial.id));
}

/** The liking of the verdict, 1 to 9, or null. */
export function verdictLiking(run: RunState): number | null {
  return run.typed['verdict.liking'] ? Number(run.typed['verdict.liking']) : null;
}

/** The step of the verdict. */
export function verdictStep(run: RunState): Step {
  const keeps = run.typed['verdict.decision'] === 'keep';
  return {
    key: 'verdict',
    say: `Your verdict on ${shortCodes(judged(run))}`,
    draw: (walk) => <Verdict walk={walk} />,
    ask: [decisionField, verdictWords],
    done: keeps ? 'Next: a formula draft' : 'Keep in the Book',
  };
}

function Verdict({ walk }: { walk: Walk }) {
  const run = walk.state.value;
  const all = candidates(run).filter(({ vials }) => vials.length > 0);
  const chosen = codesOf(judged(run));
  const strips = stripsOf(run);
  return (
    <>
      {all.length > 1 && (
        <div class="tiles" role="group" aria-label="Which layering">
          {all.map(({ vials, liking }) => {
            const codes = codesOf(strips.filter(({ vial }) => vials.includes(vial.id)));
            return (
              <button
                class={codes === chosen ? 'tile mono on' : 'tile mono'}
                aria-pressed={codes === chosen}
                onClick={() => void walk.happen({ type: 'typed', key: 'verdict.vials', text: vials.join(' ') })}
              >
                {codes}
                {liking !== null && <small>liked {Math.round(liking * 10) / 10}</small>}
              </button>
            );
          })}
        </div>
      )}
      <Scale {...{ walk, name: 'verdict.liking', from: 1, to: 9, words: likingWords }} title="How do you like it?" />
    </>
  );
}
