import { find } from '../../records/shelf';
import type { Walk } from '../run';
import { MOMENTS, momentText, readingOf } from './readings';
import { intensityWords, likingWords, Scale } from './Scale';

/** When it is smelled, and which strips. */
export function ReadingHead({ walk, n }: { walk: Walk; n: number }) {
  return (
    <>
      <Moments walk={walk} n={n} />
      <Smelled walk={walk} n={n} />
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
          {find('vial', id)?.code ?? 'gone'}
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
