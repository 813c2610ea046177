import { BlendMap } from '../../ui/plot/BlendMap';
import { answer, asTyped, supposing, types } from '../engine/answers';
import type { RunState } from '../engine/fold';
import type { Step, Walk } from '../engine/task';
import { dropsHeading, dropsWords } from './blends';
import { fields } from './fields';
import { blendSteps } from './judging';
import { mapOf } from './mapOf';
import { apartWords, enoughWords, repeatWords, resultOf } from './outcome';
import { foundIn, searchOf, type Found, type Search } from './search';

/** Where the search stands after `n` blends. What it says is worked out only while it is shown. */
export function lookStep(run: RunState, n: number): Step {
  const key = `look.${n}`;
  const search = searchOf(run)!;
  if (run.at !== key || search.judged.length === 0) return { key, say: 'Results so far', ...stopping(run) };
  const found = foundIn(search);
  return {
    key,
    say: `Best so far: ‹${dropsHeading(found.bestDrops, search.vials)}›`,
    more: [apartWords(found, search)].filter(Boolean),
    results: [resultOf(search)],
    draw: () => (
      <>
        <BlendMap {...mapOf(search, found.enough === null)} />
        {[enoughWords(found), repeatWords(search)].filter(Boolean).map((line) => (
          <p class="quiet">{line}</p>
        ))}
      </>
    ),
    ...(!stops(run) && found.enough === null ? goingOn(search, n, found) : saving(run, n, found)),
  };
}

function stops(run: RunState): boolean {
  return answer(run, fields.stop) === 'yes';
}

function stopping(run: RunState): Partial<Step> {
  return stops(run) ? { done: 'Save' } : {};
}

/** One proposal: the next blend on the main button. */
function goingOn({ vials }: Search, n: number, { nextDrops }: Found): Partial<Step> {
  return {
    act: (walk) => propose(walk, n, nextDrops),
    done: `Next: ${dropsWords(nextDrops, vials)}`,
    offers: [{ words: 'Stop and save', type: types(fields.stop, 'yes'), leave: true }],
  };
}

/** The proposal is written down, so that it stays what it was; then it is made. */
async function propose(walk: Walk, n: number, drops: readonly number[]): Promise<void> {
  const known = answer(walk.state.peek(), fields.proposed(n)) !== null;
  const proposal = asTyped(types(fields.proposed(n), [...drops]));
  if (known || (await walk.happen(...proposal))) await walk.goTo(blendSteps(walk.state.peek(), n)[0]!.key, true);
}

/** It is enough: saved by the main button, and one more by the other. */
function saving(run: RunState, n: number, { nextDrops }: Found): Partial<Step> {
  const more = { ...types(fields.proposed(n), [...nextDrops]), ...types(fields.stop, 'no') };
  return {
    types: types(fields.stop, 'yes'),
    done: 'Save',
    offers: [{ words: 'One more blend', type: more, go: blendSteps(supposing(run, more), n)[0]!.key }],
  };
}
