import type { AnyRecord } from '../../records/kind/kinds';
import { newRecord } from '../../records/shelf';
import { Refusal } from '../../core/text/refusal';
import { FieldInput } from '../../ui/controls/FieldInput';
import { formatPlain } from '../../ui/format';
import { answer } from '../engine/answers';
import { amount, inRun, optionalAmount, textOf, words } from '../engine/fields';
import type { RunState } from '../engine/fold';
import { freeName } from '../shared/freeName';
import type { Step, Task, Walk } from '../engine/task';
import './scale.css';

const readability = amount({ name: 'readability', title: 'Smallest step', unit: 'g', above: 0, max: 100 });
const fields = {
  name: words({ name: 'name', title: 'Name of the scale', max: 30 }),
  readability,
  capacity: optionalAmount({ name: 'capacity', title: 'Carries', unit: 'g', above: 0, max: 1e6 }),
  coin: (i: number) =>
    amount({ name: `coin.${i}`, title: `Coin, weighing ${i}`, unit: 'g', above: 0, max: 1000, scale: readability }),
};
const TIMES = 3; // our choice: as often as anyone does it

function coins() {
  return Array.from({ length: TIMES }, (_, i) => fields.coin(i + 1));
}

function cardStep(): Step<'card'> {
  const name = { ...fields.name, preset: freeName('scale', 'Scale') };
  return {
    key: 'card',
    say: 'Add a scale.',
    ask: [name, fields.readability, fields.capacity],
    rows: coins(),
    card: {
      sentence: 'A scale called {name}. It reads to {readability} and takes up to {capacity}',
      slots: {
        readability: {
          missing: 'its smallest step',
          asks: 'Choose its smallest step',
          usual: ['1', '0.1', '0.01', '0.001'].map((value) => ({ value, label: `${value} g` })),
        },
        capacity: {
          missing: 'its maximum',
          optional: true,
          usual: ['50', '200', '500', '5000'].map((value) => ({ value, label: `${value} g` })),
        },
      },
    },
    draw: (walk) => <Coins walk={walk} />,
    more: ['The spread is added to the ± of everything you weigh on it. Left empty, the ± is at least one step.'],
    done: 'Save',
  };
}

/** What weighings of one coin tell of a scale, g. */
function repeatWords(coinG: readonly number[]): string {
  if (coinG.length === 0) return '';
  if (coinG.length === 1) return 'Once says nothing yet: weigh it again.';
  const spread = Math.max(...coinG) - Math.min(...coinG);
  return spread === 0 ? 'All the same.' : `They differ by ${formatPlain(spread, 2)} g.`;
}

/** Does it repeat? One coin, put on three times. */
function Coins({ walk }: { walk: Walk }) {
  const run = walk.state.value;
  const coinG = coins().flatMap((field) => answer(run, field) ?? []);
  return (
    <section class="coins" aria-label="Does it repeat?">
      <p>Does it repeat? Weigh one coin three times, off and on again.</p>
      {coins().map((field) => {
        const text = textOf(run, field);
        const read = inRun(run, field).read(text);
        return (
          <FieldInput
            key={field.name}
            field={inRun(run, field)}
            text={text}
            problem={text.trim() === '' || read.ok ? undefined : read.why}
            onText={(typed) => walk.happen({ type: 'typed', key: field.name, text: typed })}
          />
        );
      })}
      <p class="note" role="status">
        {repeatWords(coinG)}
      </p>
    </section>
  );
}

function keep(run: RunState): AnyRecord[] {
  const readabilityG = answer(run, fields.readability);
  if (readabilityG === null) throw new Refusal('Choose its smallest step.');
  const capacityG = answer(run, fields.capacity);
  const coinG = coins().flatMap((field) => answer(run, field) ?? []);
  const known = {
    name: answer(run, fields.name) ?? freeName('scale', 'Scale'),
    readabilityG,
    ...(capacityG === null ? {} : { capacityG }),
    ...(coinG.length > 1 ? { coinG } : {}),
  };
  return [newRecord('scale', known)];
}

/** A scale, asked about once: its step, what it carries, and how well it repeats. */
export const scale: Task<'card'> = {
  id: 'scale',
  recorded: true,
  title: () => 'Add a scale',
  steps: () => [cardStep()],
  keep,
};
