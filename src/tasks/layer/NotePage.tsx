import { useState } from 'preact/hooks';
import { Liking, Strength } from '../../ui/controls/Scale';
import { tagOfId } from '../../workshop/thing/labelled';
import { answer } from '../engine/answers';
import type { RunState } from '../engine/fold';
import type { Step, Walk } from '../engine/task';
import { fields } from './fields';
import { headOf, MOMENTS, momentText, noteOf, noteWords, typed } from './notes';
import { WordChips } from './WordChips';

const MANY_STRIPS = 4; // our choice: that many are hardly all smelled at once, so the choice stands open

/** All of a note on one page: when and what, words, strength, liking. `key` is that at which the run is. */
export function noteStep(run: RunState, n: number, key: string): Step {
  const { empty: _, ...note } = noteOf(run, n);
  const scores = noteWords({ ...note, words: '', note: '' });
  return {
    key,
    say: `Smell ${headOf(note)}.`,
    draw: (walk) => <NotePage walk={walk} n={n} />,
    ask: [fields.words(n), fields.note(n)],
    told: scores ? [['Scores', scores]] : [],
    types: { [fields.state(n).name]: 'saved' },
    done: 'Save the note',
    next: 'fan',
  };
}

function NotePage({ walk, n }: { walk: Walk; n: number }) {
  const run = walk.state.value;
  const [open] = useState(() => {
    const { vials } = noteOf(walk.state.peek(), n);
    return vials.length >= MANY_STRIPS && vials.length === answer(walk.state.peek(), fields.all(n))?.length;
  });
  return (
    <>
      <p class="quiet">About 1 cm from the nose, one or two short sniffs.</p>
      <details class="fold" open={open}>
        <summary>Other time, or fewer strips</summary>
        <div class="folded">
          <Moments walk={walk} n={n} />
          <Smelled walk={walk} n={n} />
        </div>
      </details>
      <WordChips walk={walk} n={n} />
      <Liking
        chosen={answer(run, fields.liking(n))}
        onChoose={(text) => void walk.happen(typed(fields.liking(n), text))}
      />
      <Strength
        chosen={answer(run, fields.strength(n))}
        onChoose={(text) => void walk.happen(typed(fields.strength(n), text))}
      />
    </>
  );
}

function Moments({ walk, n }: { walk: Walk; n: number }) {
  const chosen = answer(walk.state.value, fields.minute(n));
  return (
    <div class="tiles" role="group" aria-label="Time since the dip">
      {[null, ...MOMENTS].map((minute) => (
        <button
          class={minute === chosen ? 'tile on' : 'tile'}
          aria-pressed={minute === chosen}
          onClick={() => void walk.happen(typed(fields.minute(n), minute === null ? '' : String(minute)))}
        >
          {minute === null ? 'now' : momentText(minute)}
        </button>
      ))}
    </div>
  );
}

/** The strips that were smelled: one tap leaves one out, or takes it back. */
function Smelled({ walk, n }: { walk: Walk; n: number }) {
  const { vials } = noteOf(walk.state.value, n);
  const all = answer(walk.state.value, fields.all(n)) ?? [];
  if (all.length < 2) return null;
  async function toggle(id: string) {
    const kept = all.filter((one) => (one === id ? !vials.includes(one) : vials.includes(one)));
    if (kept.length > 0) await walk.happen(typed(fields.vials(n), kept.join(' ')));
  }
  return (
    <div class="tiles" role="group" aria-label="Strips smelled together">
      {all.map((id) => (
        <button
          class={vials.includes(id) ? 'tile mono on' : 'tile mono'}
          aria-pressed={vials.includes(id)}
          onClick={() => void toggle(id)}
        >
          {tagOfId(id) ?? 'gone'}
        </button>
      ))}
    </div>
  );
}
