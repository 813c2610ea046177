import { beforeEach, describe, expect, test } from 'vitest';
import type { Batch } from '../../../src/records/kind/batch';
import type { Test } from '../../../src/records/kind/test';
import { shelf, takeIn } from '../../../src/records/shelf';
import { batch as batchTask } from '../../../src/tasks/batch/task';
import { blind } from '../../../src/tasks/blind/task';
import { pickable, recordOfSample } from '../../../src/tasks/blind/samples';
import { freshRun } from '../../../src/tasks/engine/fold';
import { withFact } from '../../../src/workshop/made/since';
import { weighAll } from '../batch/batchRuns';
import { batchShelf, clearPlan } from '../batch/batchShelf';
import { answerAll, begin, rightCode } from './sittings';

let made: Batch;
beforeEach(() => {
  shelf.records.value = new Map();
  takeIn(batchShelf());
  const kept = batchTask.keep(weighAll(clearPlan))[0] as Batch;
  made = withFact(kept, { fact: 'retained', from: 47, to: 48, where: '4 °C, dark', until: '2027-01-01' });
  takeIn([made]);
});

describe('a batch as a sample', () => {
  test('is picked itself, and by the bottles of it that were put aside', () => {
    const [whole, aside] = pickable().filter(({ id }) => recordOfSample(id) === made.id);
    expect([whole!.code, aside!.code]).toEqual(['B1', 'B1-047']);
    expect(aside!.what).toContain('B1-047 to B1-048, put aside 4 °C, dark');
  });

  test('led to the test, and a nose with an id is kept with it', () => {
    const [whole, aside] = pickable().filter(({ id }) => recordOfSample(id) === made.id);
    const names = { 'sample.0': 'fresh', 'sample.1': 'kept', assessor: 'N2' };
    const walk = begin('triangle', { ...names, 'from.0': whole!.id, 'from.1': aside!.id, tries: '3' });
    answerAll(walk, (design, i) => [rightCode(design, i)]);
    expect(walk.state().typed['smelled']).toBeUndefined(); // fit for drinks: it is tasted
    const [kept] = blind.keep(walk.state()) as [Test];
    expect(kept).toMatchObject({ assessor: 'N2', sources: [made.id, made.id], from: [made.id] });
    expect(blind.steps({ ...freshRun, typed: {} })[0]!.ask!.map(({ name }) => name)).toContain('assessor');
  });
});
