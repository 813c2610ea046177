import { formatPlain } from '../../ui/format';
import { Liking } from '../../ui/controls/Scale';
import { answer } from '../engine/answers';
import type { RunState } from '../engine/fold';
import type { Offer, Step, Walk } from '../engine/task';
import { dryingAt } from './clock';
import { fields } from './fields';
import { isDry, notesOf, typed } from './notes';
import { codesOf, inFan, shortCodes, stripsOf, type Strip } from './strips';
import { setsOf, type SmelledSet } from './tries';

/** What a verdict can be about: the fan, and what else was smelled together; best liked first, the fan before its equals. */
export function candidates(run: RunState): SmelledSet[] {
  const fan = { vials: inFan(run).map(({ vial }) => vial.id), liking: null };
  const together = notesOf(run).filter(({ vials }) => vials.length > 1 || fan.vials.length < 2);
  const sets = setsOf([fan, ...together]);
  return sets.sort((a, b) => (b.liking ?? 0) - (a.liking ?? 0));
}

/** The strips the verdict is about: those chosen, else the best liked together. */
export function judged(run: RunState): Strip[] {
  const all = candidates(run);
  const chosen = answer(run, fields.judged)?.join(' ');
  const set = all.find(({ vials }) => vials.join(' ') === chosen) ?? all[0];
  return stripsOf(run).filter(({ vial }) => set?.vials.includes(vial.id));
}

/** The liking that the notes end in for what is judged, 1 to 9, or null. */
function lastLiking(run: RunState): number | null {
  const key = keyOf(judged(run).map(({ vial }) => vial.id));
  const same = notesOf(run).filter((note) => keyOf(note.vials) === key && isDry(note));
  return same.findLast(({ liking }) => liking !== null)?.liking ?? null;
}

function keyOf(vials: readonly string[]): string {
  return [...vials].sort().join(' ');
}

/** The liking of the verdict, 1 to 9, or null: that of the last note, unless it was changed. */
export function verdictLiking(run: RunState): number | null {
  return answer(run, fields.verdictLiking) ?? lastLiking(run);
}

/** Whether what is judged was never smelled together dry: a strip was wet when the fan was left, and no note says otherwise. */
export function isJudgedWet(run: RunState): boolean {
  const strips = judged(run);
  const left = run.done['fan'];
  const key = keyOf(strips.map(({ vial }) => vial.id));
  if (!left || notesOf(run).some((note) => isDry(note) && keyOf(note.vials) === key)) return false;
  const at = Date.parse(left);
  return strips.some((strip) => strip.dippedAt !== null && !dryingAt({ ...strip, dippedAt: strip.dippedAt }, at).ready);
}

const toFormula: Offer<string> = { words: 'Take it to a formula', type: { [fields.draft.name]: 'yes' }, leave: true };

/** How much of each: for as many strips as can be blended. */
function toProportions(strips: readonly Strip[]): Offer<string>[] {
  const typed = Object.fromEntries(strips.map(({ vial }, i) => [`vial.${i}`, vial.id]));
  const right = strips.length >= 2 && strips.length <= MOST_BLENDED;
  return right ? [{ words: 'Find the proportions', leave: true, start: { task: 'proportions', typed } }] : [];
}

const MOST_BLENDED = 4;

/** The step of the verdict. */
export function verdictStep(run: RunState): Step {
  const keeps = answer(run, fields.decision) === 'keep';
  const drafts = answer(run, fields.draft) === 'yes';
  const liking = verdictLiking(run);
  return {
    key: 'verdict',
    say: `Your verdict on ${shortCodes(judged(run))}`,
    draw: (walk) => <Verdict walk={walk} />,
    ask: [fields.decision, fields.verdictNote],
    told: liking === null ? [] : [['Liking', `${formatPlain(liking, 2)} of 9`]],
    ...(keeps && !drafts ? { offers: [toFormula, ...toProportions(judged(run))] } : {}),
    done: keeps && drafts ? 'Next: the formula' : 'Save',
  };
}

function Verdict({ walk }: { walk: Walk }) {
  const run = walk.state.value;
  const known = lastLiking(run) !== null && answer(run, fields.verdictLiking) === null;
  const liking = (
    <Liking chosen={verdictLiking(run)} onChoose={(n) => void walk.happen(typed(fields.verdictLiking, n))} />
  );
  return (
    <>
      <Which walk={walk} />
      {known ? (
        <details class="fold">
          <summary>{`Liked ${formatPlain(lastLiking(run)!, 2)} of 9 · change`}</summary>
          <div class="folded">{liking}</div>
        </details>
      ) : (
        liking
      )}
    </>
  );
}

/** The sets that a verdict can be about, where there are several. */
function Which({ walk }: { walk: Walk }) {
  const run = walk.state.value;
  const all = candidates(run).filter(({ vials }) => vials.length > 0);
  const chosen = codesOf(judged(run));
  const strips = stripsOf(run);
  if (all.length < 2) return null;
  return (
    <div class="tiles" role="group" aria-label="Verdict on">
      {all.map(({ vials, liking }) => {
        const codes = codesOf(strips.filter(({ vial }) => vials.includes(vial.id)));
        return (
          <button
            class={codes === chosen ? 'tile judged mono on' : 'tile judged mono'}
            aria-pressed={codes === chosen}
            onClick={() => void walk.happen(typed(fields.judged, vials.join(' ')))}
          >
            {codes}
            {liking !== null && <small>liked {formatPlain(liking, 2)}</small>}
          </button>
        );
      })}
    </div>
  );
}
