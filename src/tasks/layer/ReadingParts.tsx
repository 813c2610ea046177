import { useState } from 'preact/hooks';
import { tagOfId } from '../../workshop/labelled';
import type { Walk } from '../engine/task';
import { MOMENTS, momentText, readingOf } from './readings';
import { intensityWords, likingWords, Scale } from '../shared/Scale';
import { WordChips } from './WordChips';

const MANY_STRIPS = 4; // our choice: that many are hardly all smelled at once, so the choice stands open

/** When it is smelled, which strips, and words for it. */
export function ReadingHead({ walk, n }: { walk: Walk; n: number }) {
  const [open] = useState(() => {
    const { vials } = readingOf(walk.state.peek(), n);
    return vials.length >= MANY_STRIPS && vials.join(' ') === walk.state.peek().typed[`reading.${n}.all`];
  });
  return (
    <>
      <p class="quiet">About 1 cm from the nose, one or two short sniffs.</p>
      <details class="fold" open={open}>
        <summary>Another moment, or not all strips</summary>
        <div class="folded">
          <Moments walk={walk} n={n} />
          <Smelled walk={walk} n={n} />
        </div>
      </details>
      <WordChips walk={walk} n={n} />
    </>
  );
}

function Moments({ walk, n }: { walk: Walk; n: number }) {
  const name = `reading.${n}.minute`;
  const chosen = walk.state.value.typed[name] ?? '';
  const moments = [['', 'now'] as const, ...MOMENTS.map((minute) => [String(minute), momentText(minute)] as const)];
  return (
    <div class="tiles" role="group" aria-label="When it is smelled, after the dip">
      {moments.map(([text, words]) => (
        <button
          class={text === chosen ? 'tile on' : 'tile'}
          aria-pressed={text === chosen}
          onClick={() => void walk.happen({ type: 'typed', key: name, text })}
        >
          {words}
        </button>
      ))}
    </div>
  );
}

/** The strips that were smelled: one tap leaves one out, or takes it back. */
function Smelled({ walk, n }: { walk: Walk; n: number }) {
  const { vials } = readingOf(walk.state.value, n);
  const all = (walk.state.value.typed[`reading.${n}.all`] ?? '').split(' ').filter(Boolean);
  if (all.length < 2) return null;
  async function toggle(id: string) {
    const kept = all.filter((one) => (one === id ? !vials.includes(one) : vials.includes(one)));
    if (kept.length > 0) await walk.happen({ type: 'typed', key: `reading.${n}.vials`, text: kept.join(' ') });
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

/** How strong it is and how it is liked. */
export function ReadingScores({ walk, n }: { walk: Walk; n: number }) {
  return (
    <div class="scales">
      <Scale
        {...{ walk, name: `reading.${n}.intensity`, from: 0, to: 10, words: intensityWords }}
        title="How strong is it?"
      />
      <Scale
        {...{ walk, name: `reading.${n}.liking`, from: 1, to: 9, words: likingWords }}
        title="How do you like it?"
      />
    </div>
  );
}
