import { Refusal } from '../../core/text/refusal';
import type { AnyRecord } from '../../records/kind/kinds';
import { newRecord } from '../../records/shelf';
import { vessels } from '../../tables/vessels';
import { formatGiven } from '../../ui/format';
import { vesselClasses } from '../../workshop/vessels';
import { answer } from '../engine/answers';
import { amount, choice, words } from '../engine/fields';
import type { RunState } from '../engine/fold';
import { freeName } from '../shared/freeName';
import type { Step, Task } from '../engine/task';

const OWN = 'own';

const fields = {
  name: words({ name: 'name', title: 'Name on the vessel', max: 30 }),
  sort: choice({
    name: 'sort',
    title: 'What it is',
    options: [
      ...vesselClasses(),
      {
        value: OWN,
        label: 'Another, with its tolerance on it',
        short: 'another vessel',
        hint: 'flask, burette, pipette',
      },
    ],
  }),
  capacity: amount({ name: 'capacity', title: 'Holds', unit: 'mL', above: 0, max: 10000 }),
  off: amount({ name: 'off', title: 'Tolerance, ±', unit: 'mL', above: 0, max: 100 }),
};

function cardStep(run: RunState): Step<'card'> {
  const own = answer(run, fields.sort) === OWN;
  return {
    key: 'card',
    say: 'Add a vessel.',
    ask: [
      fields.sort,
      { ...fields.name, preset: freeName('vessel', 'Vessel') },
      ...(own ? [fields.capacity, fields.off] : []),
    ],
    card: {
      sentence: `{sort} called {name}${own ? '. It holds {capacity}, and a filling may be off by {off}' : ''}`,
      slots: {
        sort: { missing: 'which vessel', asks: 'Choose what it is' },
        capacity: { missing: 'how much', asks: 'Say how much it holds' },
        off: { missing: 'how far', asks: 'Read its tolerance' },
      },
    },
    more: ['What is measured with it is off by the same each time: its tolerance is shared by all its vials.'],
    done: 'Save',
  };
}

function keep(run: RunState): AnyRecord[] {
  const row = vessels.find(({ id }) => id === answer(run, fields.sort));
  const name = answer(run, fields.name) ?? freeName('vessel', 'Vessel');
  if (row) {
    const { label: sort, capacityMl, readsMl, tolerance } = row;
    return [newRecord('vessel', { name, sort, capacityMl, readsMl, tolerance })];
  }
  const [capacityMl, mL] = [answer(run, fields.capacity), answer(run, fields.off)];
  if (capacityMl === null || mL === null) throw new Refusal('Say what it holds, and its tolerance.');
  const sort = `± ${formatGiven(mL)} mL, each filling`;
  return [newRecord('vessel', { name, sort, capacityMl, readsMl: mL / 2, tolerance: { mL } })];
}

/** A vessel of one's own with its class, asked about once. */
export const vessel: Task<'card'> = {
  id: 'vessel',
  recorded: true,
  title: () => 'Add a vessel',
  steps: (run) => [cardStep(run)],
  keep,
};
