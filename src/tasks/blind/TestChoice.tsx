import type { Walk } from '../engine/task';
import { METHODS, methodOf } from './methods';
import './blind.css';

/** The methods as big rows. With the first choice the number is drawn that codes and orders follow from. */
export function TestChoice({ walk }: { walk: Walk }) {
  const chosen = methodOf(walk.state.value)?.id;
  async function choose(id: string) {
    const seed = String(crypto.getRandomValues(new Uint32Array(1))[0]!);
    const drawn = walk.state.peek().typed['seed'] !== undefined;
    const stored = await walk.happen(
      { type: 'typed', key: 'test', text: id },
      ...(drawn ? [] : [{ type: 'typed' as const, key: 'seed', text: seed }]),
    );
    if (stored) await walk.goTo('served', true);
  }
  return (
    <ul class="list">
      {METHODS.map(({ id, name, more }) => (
        <li>
          <button
            class={id === chosen ? 'entry method chosen' : 'entry method'}
            aria-pressed={id === chosen}
            onClick={() => void choose(id)}
          >
            <b>{name}</b>
            <span>{more}</span>
          </button>
        </li>
      ))}
    </ul>
  );
}
