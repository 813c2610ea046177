import { beforeEach, describe, expect, test } from 'vitest';
import { storyOf } from '../../../src/app/describe/story';
import type { RunEvent } from '../../../src/records/kind/run';
import { shelf, takeIn } from '../../../src/records/shelf';
import { fold } from '../../../src/tasks/engine/fold';
import { leaving, nextKey } from '../../../src/tasks/engine/leaving';
import { placeOf } from '../../../src/tasks/engine/place';
import { count } from '../../../src/tasks/count/task';
import { material, pipette, vialOf } from '../../tasks/count/countShelf';

/** A count as the screen stores it, a second from event to event. */
function counting() {
  const events: RunEvent[] = [];
  const put = (one: Pick<RunEvent, 'type' | 'key'> & Partial<RunEvent>) =>
    void events.push({
      run: 'r',
      seq: events.length,
      at: new Date(1_800_000_000_000 + events.length * 1000).toISOString(),
      ...one,
    });
  return {
    events,
    type: (key: string, text: string) => put({ type: 'typed', key, text }),
    tap: (id: string, times: number) => Array.from({ length: times }, () => put({ type: 'drop', key: `drops.${id}` })),
    go: (key: string) => put({ type: 'go', key }),
    next() {
      const state = fold(events);
      const steps = count.steps(state);
      const step = steps[placeOf(steps, state)]!;
      leaving(step, state, nextKey(count, step, state) ?? '').forEach(put);
    },
  };
}

/** Two of CARD, five of HEX instead of four, and then a third of CARD. */
function withARescue() {
  const run = counting();
  run.type('formula', 'hand');
  run.type('pick.card', 'yes');
  run.type('pick.hex', 'yes');
  run.type('plan.card', '2');
  run.type('plan.hex', '4');
  run.type('dropper', 'pip');
  run.next();
  run.tap('card', 2);
  run.next();
  run.tap('hex', 5);
  run.next();
  run.type('slip.count.hex', 'scaleUp|card=3');
  run.next();
  run.tap('card', 1);
  run.next();
  return run.events;
}

const counts = (events: readonly RunEvent[]) =>
  storyOf(count, events)
    .filter(({ say }) => say.startsWith('Take'))
    .map(({ say, answers, at }) => [say.replace(/[‹›]/g, ''), answers.at(-1)![1], at]);

beforeEach(() => {
  shelf.records.value = new Map();
  takeIn([material('pgf'), ...pipette, vialOf('card', 0.01), vialOf('hex', 0.005)]);
});

describe('the story of a count with a rescue', () => {
  test('tells each turn with the drops that it had then', () => {
    const events = withARescue();
    const times = events.filter(({ type, text }) => type === 'go' && text?.startsWith('count.')).map(({ at }) => at);
    expect(counts(events)).toEqual([
      ['Take CARD 1 % w/w. Count 2 drops.', '2', times[0]],
      ['Take HEX 0.5 % w/w. Count 4 drops.', '5', times[1]],
      ['Take CARD 1 % w/w. Count 3 drops.', '3', times[2]],
    ]);
  });

  test('stays as it was told when the vial is renamed or erased', () => {
    const events = withARescue();
    const before = storyOf(count, events);
    shelf.records.value = new Map();
    const renamed = { ...vialOf('card', 0.02), code: 'OTHER' };
    takeIn([renamed]);
    expect(storyOf(count, events)).toEqual(before);
  });

  test('of a run that the first version stored tells the same, from the events before each step', () => {
    const events = withARescue();
    const old = events.filter(({ type }) => type !== 'preset').map(({ told: _, ...event }) => event);
    expect(counts(old)).toEqual(counts(events));
  });

  test('a step that was only looked at again is told once; one that was changed, twice', () => {
    const run = counting();
    for (const [key, text] of Object.entries({ formula: 'hand', 'pick.card': 'yes', 'plan.card': '2' }))
      run.type(key, text);
    run.next();
    run.go('card');
    run.next();
    const said = () => storyOf(count, run.events).map(({ say }) => say);
    expect(said()).toEqual([expect.stringContaining('2 drops of CARD 1 % w/w')]);
    run.go('card');
    run.type('plan.card', '3');
    run.next();
    expect(said()).toEqual([2, 3].map((n) => expect.stringContaining(`${n} drops of CARD 1 % w/w`)));
  });

  test('names what was picked', () => {
    expect(storyOf(count, withARescue())[0]!.answers).toEqual([['Picked', 'CARD 1 % w/w, HEX 0.5 % w/w']]);
  });
});
