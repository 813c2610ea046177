import { beforeEach, describe, expect, test } from 'vitest';
import type { Layering } from '../../../src/records/kind/layering';
import { kinds } from '../../../src/records/kind/kinds';
import { readRecord } from '../../../src/records/kind/record';
import { find, shelf, takeIn } from '../../../src/records/shelf';
import type { Vial } from '../../../src/records/kind/vial';
import { clockOf, dryingAt } from '../../../src/tasks/layer/clock';
import { closing, dueAt, dueNotes, notesOf, openNote } from '../../../src/tasks/layer/notes';
import { inFan, stripsOf } from '../../../src/tasks/layer/strips';
import { layer } from '../../../src/tasks/layer/task';
import { pairsOfFan } from '../../../src/tasks/layer/together';
import { smelledSets } from '../../../src/tasks/layer/tries';
import { placeOf } from '../../../src/tasks/engine/place';
import { benchRun, noteStrips, vialOnShelf } from './strips';

let card: Vial, hex: Vial, pgf: Vial;
beforeEach(() => {
  shelf.records.value = new Map();
  [card, hex, pgf] = [vialOnShelf('CARD'), vialOnShelf('HEX3'), vialOnShelf('PGF', { solvent: 'propylene-glycol' })];
});

type Bench = ReturnType<typeof benchRun>;
const stepOf = (run: Bench) => layer.steps(run.state())[placeOf(layer.steps(run.state()), run.state())]!;
const layeringOf = (run: Bench) => layer.keep(run.state())[0] as Layering;

function verdict(run: Bench, minute: number, decision = 'keep'): void {
  run.happen(minute, 'typed', 'verdict.decision', decision);
  run.happen(minute, 'typed', 'verdict.liking', '8');
}

describe('picking and dipping strips', () => {
  test('with nothing picked the run stays at the vials and says so', () => {
    const run = benchRun();
    expect(stepOf(run).key).toBe('pick');
    expect(stepOf(run).problem).toBe('Tick at least one vial.');
  });

  test('without a vial on the shelf, diluting one is offered', () => {
    shelf.records.value = new Map();
    expect(stepOf(benchRun()).offers![0]!.start!.task).toBe('dilute');
  });

  test('strips are dipped in the order picked, one tap each, and the fan waits for the last', () => {
    const run = benchRun();
    for (const vial of [hex, card]) run.happen(0, 'typed', `pick.${vial.id}`, 'yes');
    expect(stepOf(run).next).toBe('dip');
    run.happen(0, 'go', 'dip', 'pick');
    expect(stepOf(run).say).toContain('‹HEX3 1 %›');
    run.happen(1, 'mark', `dipped.${hex.id}`);
    expect(stepOf(run).say).toContain('‹CARD 1 %›');
    expect(stepOf(run).problem).toContain('CARD 1 % is not dipped yet');
    run.happen(2, 'mark', `dipped.${card.id}`);
    expect(stepOf(run).problem).toBeUndefined();
    expect(inFan(run.state()).map(({ vial }) => vial.code)).toEqual(['HEX3', 'CARD']);
  });

  test('a dip tapped by mistake is undone', () => {
    const run = benchRun();
    run.dip(0, card);
    run.happen(0, 'unmark', `dipped.${card.id}`);
    expect(inFan(run.state())).toEqual([]);
  });

  test('thirteen strips are too many, and six bring the advice of five', () => {
    const run = benchRun();
    const vials = Array.from({ length: 13 }, (_, i) => vialOnShelf(`V${i + 10}`));
    vials.slice(0, 6).forEach((vial) => run.happen(0, 'typed', `pick.${vial.id}`, 'yes'));
    expect(stepOf(run).more![0]).toContain('At most 5');
    expect(stepOf(run).problem).toBeUndefined();
    vials.slice(6).forEach((vial) => run.happen(0, 'typed', `pick.${vial.id}`, 'yes'));
    expect(stepOf(run).problem).toBe('12 strips at most: untick 1.');
  });

  test('with several dips it is said that the clock counts from the last, and is known for one only', () => {
    const run = benchRun();
    run.happen(0, 'typed', `pick.${card.id}`, 'yes');
    run.happen(0, 'go', 'dip', 'pick');
    expect(stepOf(run).more!.join()).not.toContain('last dip');
    run.happen(0, 'typed', `dips.${card.id}`, '3');
    expect(stepOf(run).more![1]).toContain('Tap after dip ‹3›: the clock counts from the last dip');
  });

  test('a room nobody has drying figures for is refused in one sentence', () => {
    const run = benchRun();
    const field = stepOf(run).ask![0]!;
    expect(field.read('50')).toEqual({ ok: false, why: 'Room: at most 40 °C, not 50 °C.' });
    expect(field.read('')).toEqual({ ok: true, value: null });
  });
});

describe('the dry-off clock on the bench', () => {
  const dip = { dippedAt: 0, driedAt: null, stillWet: false };

  test('ethanol is ready after about two minutes (common practice)', () => {
    const clock = clockOf(card, null);
    expect(clock.words).toBe('about 2 min');
    expect(dryingAt({ clock, ...dip }, 60_000)).toEqual({
      ready: false,
      wet: 0.5,
      words: 'wet, about 60 s',
      short: ['Wet', '60 s'],
    });
    expect(dryingAt({ clock, ...dip }, 121_000)).toMatchObject({ ready: true, wet: 0, words: 'dry' });
  });

  test('propylene glycol, triacetin and medium-chain oil do not dry off and are smelled wet, at once', () => {
    for (const solvent of ['propylene-glycol', 'triacetin', 'mct']) {
      const clock = clockOf(vialOnShelf('SLOW', { solvent }), null);
      expect(clock.words).toContain('does not dry within a session');
      expect(dryingAt({ clock, ...dip }, 0)).toMatchObject({ ready: true, wet: 1 });
    }
  });

  test('a warm room dries ethanol sooner', () => {
    expect(clockOf(card, 30).seconds!).toBeLessThan(clockOf(card, 20).seconds!);
  });

  test('what the person calls wet or dry goes before the clock', () => {
    const clock = clockOf(card, null);
    expect(dryingAt({ clock, ...dip, driedAt: 50_000 }, 60_000).ready).toBe(true);
    expect(dryingAt({ clock, ...dip, stillWet: true }, 600_000).ready).toBe(false);
  });

  test('a drying time of one’s own is used for the next strips, scaled to their solvent', () => {
    const run = benchRun();
    run.dip(0, card);
    run.happen(1.5, 'mark', `dry.${card.id}`);
    verdict(run, 3);
    takeIn(layer.keep(run.state()));
    expect(clockOf(hex, null)).toEqual({ seconds: 90, basis: 'own time', words: 'about 1.5 min' });
    // evaporation rates 1.4 and 1.7 of the table: isopropyl alcohol leaves sooner
    expect(clockOf(vialOnShelf('IPA', { solvent: 'isopropanol-99' }), null).seconds).toBeCloseTo((90 * 1.4) / 1.7, 9);
  });
});

describe('notes on a fan over a day', () => {
  test('the moments come due one after another, and a missed one is passed over', () => {
    const run = benchRun();
    run.dip(0, card);
    run.dip(1, hex);
    expect(dueAt(run.state(), run.at(2))).toEqual({ due: null, next: { minute: 0, at: run.at(3) } }); // still wet
    expect(dueAt(run.state(), run.at(3))).toEqual({ due: 0, next: { minute: 5, at: run.at(6) } });
    noteStrips(run, 3, { words: 'sharp' });
    expect(dueAt(run.state(), run.at(4))).toEqual({ due: null, next: { minute: 5, at: run.at(6) } });
    expect(dueAt(run.state(), run.at(20))).toEqual({ due: 15, next: { minute: 60, at: run.at(61) } });
    noteStrips(run, 20, { intensity: '6' });
    expect(dueAt(run.state(), run.at(24 * 60 + 30))).toEqual({ due: 1440, next: null });
    noteStrips(run, 24 * 60 + 30, { note: 'still there' });
    expect(dueAt(run.state(), run.at(48 * 60))).toEqual({ due: null, next: null });
  });

  test('dry, at 5, 15 and 60 min, 4 h and 24 h each moment comes due at its minute, and no earlier', () => {
    const run = benchRun();
    run.dip(0, card);
    run.dip(3, hex); // the moments count from the last dip; ethanol is dry after 2 min
    const moments = [0, 5, 15, 60, 240, 1440];
    const times = [2, 5, 15, 60, 240, 1440];
    expect(dueNotes(run.state()).map(({ at }) => (at - run.at(3)) / 60_000)).toEqual(times);
    const second = 1 / 60;
    moments.forEach((minute, i) => {
      const told = i + 1 < moments.length ? { minute: moments[i + 1], at: run.at(3 + times[i + 1]!) } : null;
      expect(dueAt(run.state(), run.at(3 + times[i]!))).toEqual({ due: minute, next: told });
      expect(dueAt(run.state(), run.at(3 + times[i]! - second)).due).toBeNull();
      noteStrips(run, 3 + times[i]!, { words: 'there' });
      expect(dueAt(run.state(), run.at(3 + times[i]! + second))).toEqual({ due: null, next: told });
    });
    expect(dueNotes(run.state())).toEqual([]);
  });

  test('with a solvent that takes its time, what falls before it is dry is no moment', () => {
    const run = benchRun();
    run.dip(0, vialOnShelf('AQUA', { solvent: 'water' }));
    const dry = clockOf(find('vial', inFan(run.state())[0]!.vial.id)!, null).seconds;
    const times = dueNotes(run.state()).map(({ at }) => (at - run.at(0)) / 1000);
    expect(times[0]).toBe(dry ?? 0);
    expect(times.slice(1).every((at) => at > times[0]!)).toBe(true);
  });

  test('the list of what is due names the moment and the strips', () => {
    const run = benchRun();
    run.dip(0, card);
    run.dip(0, pgf);
    const words = layer.due!(run.state()).map((due) => due.words);
    expect(words[0]).toBe('Smell CARD 1 % + PGF 1 %, fresh');
    expect(words.slice(1).map((one) => one.split(', at ')[1])).toEqual(['5 min', '15 min', '60 min', '4 h', '24 h']);
  });

  test('a note keeps its moment, its strips, words, intensity, liking and note', () => {
    const run = benchRun();
    run.dip(0, card);
    run.dip(0, hex);
    noteStrips(run, 6, { words: 'green, sharp', intensity: '7', liking: '6', note: 'window open' });
    expect(notesOf(run.state())).toEqual([
      {
        at: '2026-05-04T10:06:00.000Z',
        minute: 5,
        vials: [card.id, hex.id],
        words: 'green, sharp',
        intensity: 7,
        liking: 6,
        note: 'window open',
      },
    ]);
  });

  test('a note begun and left empty is taken up again and never kept', () => {
    const run = benchRun();
    run.dip(0, card);
    expect(noteStrips(run, 1, {})).toBe(1);
    expect(noteStrips(run, 2, { words: ' ' })).toBe(1);
    expect(notesOf(run.state())).toEqual([]);
    noteStrips(run, 3, { words: 'warm' });
    expect(noteStrips(run, 4, { words: 'woody' })).toBe(2);
  });

  test('a note that is begun is saved from the fan, or from the page with all that it can say', () => {
    const run = benchRun();
    run.dip(0, card);
    run.happen(3, 'go', 'fan');
    expect(stepOf(run).done).toBe('Give a verdict');
    const n = noteStrips(run, 3, {});
    expect(openNote(run.state())).toBe(n);
    expect(stepOf(run).done).toBe('Give a verdict'); // nothing is written yet
    run.happen(3, 'typed', `reading.${n}.liking`, '7');
    expect(stepOf(run).done).toBe('Save the note');
    run.happen(3, 'go', `reading.${n}`);
    expect(stepOf(run)).toMatchObject({ next: 'fan', types: { [`reading.${n}.state`]: 'saved' } });
    for (const { type, key, text } of closing(run.state())) run.happen(4, type, key, text);
    run.happen(4, 'go', 'fan');
    expect(openNote(run.state())).toBeNull();
    expect(stepOf(run).done).toBe('Give a verdict');
  });

  test('a run left at a note of the first version goes on with that note', () => {
    const run = benchRun();
    run.dip(0, card);
    run.happen(3, 'mark', 'reading.1');
    run.happen(3, 'typed', 'reading.1.vials', card.id);
    for (const page of ['reading.1', 'score.1']) {
      run.happen(3, 'go', page);
      expect(stepOf(run)).toMatchObject({ key: page, next: 'fan', done: 'Save the note' });
    }
    run.happen(4, 'typed', 'reading.1.words', 'green');
    expect(notesOf(run.state())).toHaveLength(1);
    expect(openNote(run.state())).toBeNull();
  });

  test('what is written while a strip is wet says so, fulfils no moment, and counts for nothing', () => {
    const run = benchRun();
    run.dip(0, card);
    run.dip(0, pgf);
    noteStrips(run, 1, { words: 'alcohol', liking: '9' });
    const [wet] = notesOf(run.state());
    expect(wet).toMatchObject({ minute: null, wet: [card.id] }); // propylene glycol stays wet, and is smelled so
    expect(dueAt(run.state(), run.at(2)).due).toBe(0);
    expect(pairsOfFan(run.state())).toMatchObject({ done: 0, total: 1 });
    expect(smelledSets(run.state())).toEqual([]);
    run.happen(1, 'go', 'verdict', 'fan');
    expect(layeringOf(run).verdict).toMatchObject({ liking: null, wet: true });
    noteStrips(run, 3, { liking: '6' });
    expect(pairsOfFan(run.state())).toMatchObject({ done: 1, total: 1 });
    expect(layeringOf(run).verdict).toMatchObject({ liking: 6 });
    expect(layeringOf(run).verdict.wet).toBeUndefined();
    expect(readRecord(kinds.layering, JSON.parse(JSON.stringify(layeringOf(run))))).toMatchObject({ ok: true });
  });

  test('after a swap the moments start again', () => {
    const run = benchRun();
    run.dip(0, card);
    run.dip(0, hex);
    noteStrips(run, 16, { words: 'sharp' });
    run.happen(20, 'mark', `out.${hex.id}`);
    run.dip(20, pgf);
    expect(inFan(run.state()).map(({ vial }) => vial.code)).toEqual(['CARD', 'PGF']);
    expect(dueAt(run.state(), run.at(21)).due).toBe(0);
    expect(dueAt(run.state(), run.at(21)).next).toEqual({ minute: 5, at: run.at(25) });
  });
});

describe('swapping and the verdict', () => {
  test('a run left beside its fan by the first version goes on with the fan', () => {
    const run = benchRun();
    run.dip(0, card);
    for (const page of ['swap', 'add', `strip.${card.id}`, `instead.${card.id}`]) {
      run.happen(1, 'go', page);
      expect(stepOf(run).key).toBe(page);
      expect(stepOf(run)).toMatchObject({ done: 'Give a verdict', next: 'verdict' }); // the fan, as everywhere
    }
    run.happen(2, 'go', 'fan');
    expect(layer.steps(run.state()).map(({ key }) => key)).toEqual(['pick', 'dip', 'fan', 'verdict']);
  });

  test('an empty fan has no verdict', () => {
    const run = benchRun();
    run.dip(0, card);
    run.happen(1, 'mark', `out.${card.id}`);
    run.happen(1, 'go', 'fan');
    expect(stepOf(run).problem).toContain('No strip is in the fan');
    expect(() => layer.keep(run.state())).toThrow('at least one dipped strip');
  });

  test('the layering tells what was in the fan, what was taken out and when, and reads back from the store', () => {
    const run = benchRun();
    run.dip(0, card);
    run.dip(0, hex);
    run.happen(0, 'typed', `dips.${hex.id}`, '2');
    run.happen(0, 'typed', 'room', '21,5');
    noteStrips(run, 5, { words: 'sharp' });
    run.happen(9, 'mark', `out.${hex.id}`);
    run.dip(10, pgf);
    verdict(run, 30);
    const kept = layeringOf(run);
    expect(kept.name).toBe('CARD 1 % + PGF 1 %');
    expect(kept.roomC).toBe(21.5);
    expect(kept.strips.map(({ code, dips, takenOutAt }) => [code, dips, takenOutAt])).toEqual([
      ['CARD 1 %', 1, null],
      ['HEX3 1 %', 2, '2026-05-04T10:09:00.000Z'],
      ['PGF 1 %', 1, null],
    ]);
    expect(kept.verdict).toEqual({ liking: 8, decision: 'keep', words: '', vials: [card.id, pgf.id] });
    expect(kept.from).toEqual([card.id, hex.id, pgf.id]);
    expect(readRecord(kinds.layering, JSON.parse(JSON.stringify(kept)))).toMatchObject({ ok: true });
  });

  test('a strip put back lies there with its first dip', () => {
    const run = benchRun();
    run.dip(0, card);
    run.happen(5, 'mark', `out.${card.id}`);
    expect(stripsOf(run.state())[0]!.takenOutAt).toBe(run.at(5));
    run.happen(6, 'unmark', `out.${card.id}`);
    expect(inFan(run.state())[0]!.dippedAt).toBe(run.at(0));
  });
});
