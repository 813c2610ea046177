import { describe, expect, test } from 'vitest';
import { expanded, measured } from '../../src/core/number/measured';
import { newRecord, takeIn } from '../../src/records/shelf';
import { dropPicturesOf, readingsPicture } from '../../src/workshop/dropPictures';

const dropper = newRecord('dropper', { name: 'P1', tip: 'glass', outlet: 'square tip' });
const of = (id: string, made: string, mg: number, dropperId = dropper.id) => ({
  ...newRecord('calibration', {
    id,
    dropper: dropperId,
    liquid: { id: 'ethanol-96', name: 'ethanol 96 %' },
    readabilityG: 0.001,
    spread: 0.05,
    readings: [
      { drops: 20, massG: (20 * mg) / 1000 },
      { drops: 10, massG: (10 * mg) / 1000 },
    ],
    mgPerDrop: measured(mg, 0.1, { id: `calibration:${id}`, words: 'calibration' }),
  }),
  made,
});
const old = of('c1', '2026-01-05T10:00:00Z', 15.5);
const fresh = of('c2', '2026-06-05T10:00:00Z', 15.6);
const other = of('c3', '2026-06-06T10:00:00Z', 30, 'another dropper');
takeIn([dropper, old, fresh, other]);

describe('a dropper in pictures', () => {
  test('readings are drawn in mg a drop, each by its own count, with the mean and its ±', () => {
    const drop = measured(50, 0.5, { id: 'x', words: 'x' });
    const { points, band, words } = readingsPicture({
      readings: [
        { drops: 20, massG: 1 },
        { drops: 10, massG: 0.51 },
      ],
      readabilityG: 0.01,
      mgPerDrop: drop,
    });
    expect(points).toEqual([
      { name: '1', value: 50 },
      { name: '2', value: 51 },
    ]);
    expect(band).toEqual({ value: 50, uncertainty: expanded(drop) });
    expect(words).toBe('Line and band: the mean, 50.0 ± 1.0 mg.');
  });

  test('a reading far from the others is drawn hollow, and said so', () => {
    const masses = [1, 1.001, 0.999, 1.0005, 1.4];
    const readings = masses.map((massG) => ({ drops: 20, massG }));
    const { points, words } = readingsPicture({
      readings,
      readabilityG: 0.001,
      mgPerDrop: measured(54, 8, { id: 'x', words: 'x' }),
    });
    expect(points.map(({ odd = false }) => odd)).toEqual([false, false, false, false, true]);
    expect(words).toContain('hollow');
  });

  test('a dropper weighed again shows its drift, oldest first; that of another dropper is not in it', () => {
    const [drift, ...more] = dropPicturesOf(dropper);
    expect(more).toEqual([]);
    expect(drift!.points.map(({ name, value }) => [name, value])).toEqual([
      ['Jan 5, 2026', 15.5],
      ['Jun 5, 2026', 15.6],
    ]);
    expect(drift!.words).toMatch(/^Alike as chance allows.* 15\.5 ± 0\.9 mg/);
  });

  test('a calibration shows its readings, and its drift where there are others like it', () => {
    expect(dropPicturesOf(fresh).map(({ title }) => title)).toEqual([
      'One drop, mg, weighing by weighing',
      'One drop of ethanol 96 %, mg, over time',
    ]);
    expect(dropPicturesOf(other)).toHaveLength(1);
  });

  test('after a change that is more than chance the newest counts', () => {
    const worn = of('c4', '2026-09-05T10:00:00Z', 19);
    takeIn([worn]);
    const [drift] = dropPicturesOf(dropper);
    expect(drift!.band.value).toBe(19);
    expect(drift!.words).toMatch(/^It has changed/);
  });
});
