import { beforeEach, describe, expect, test } from 'vitest';
import type { Formula } from '../../../src/records/kind/formula';
import type { Layering } from '../../../src/records/kind/layering';
import { find, shelf, takeIn } from '../../../src/records/shelf';
import type { Vial } from '../../../src/records/kind/vial';
import { draftLines } from '../../../src/tasks/layer/draft';
import { familyOf } from '../../../src/tasks/layer/families';
import { restHint } from '../../../src/tasks/shared/rest';
import { layer } from '../../../src/tasks/layer/task';
import { judged, verdictLiking } from '../../../src/tasks/layer/verdict';
import { hasWord, ownWords, toggleWord, tradeWords } from '../../../src/tasks/layer/wordList';
import { placeOf } from '../../../src/tasks/engine/place';
import { benchRun, noteStrips, vialOnShelf } from './strips';

let card: Vial, hex: Vial, rose: Vial;
beforeEach(() => {
  shelf.records.value = new Map();
  [card, hex, rose] = [vialOnShelf('CARD'), vialOnShelf('HEX3', { strength: 0.001 }), vialOnShelf('ROSE')];
});

type Bench = ReturnType<typeof benchRun>;
const stepOf = (run: Bench) => layer.steps(run.state())[placeOf(layer.steps(run.state()), run.state())]!;

function dipped(...vials: Vial[]): Bench {
  const run = benchRun();
  vials.forEach((vial) => run.dip(0, vial));
  return run;
}

function kept(run: Bench): Layering {
  run.happen(60, 'typed', 'verdict.decision', 'keep');
  run.happen(60, 'typed', 'draft', 'yes');
  const records = layer.keep(run.state());
  takeIn(records);
  return records[0] as Layering;
}

describe('the own list of words', () => {
  test('grows with every reading, most used first, whatever the capitals', () => {
    const run = dipped(card);
    noteStrips(run, 1, { words: 'Warm, dusty' });
    noteStrips(run, 6, { words: 'warm; lemon' });
    kept(run);
    expect(ownWords(benchRun().state(), 1)).toEqual(['Warm', 'dusty', 'lemon']);
  });

  test('a word is tapped in and out again, and the others stay', () => {
    expect(toggleWord('', 'leafy')).toBe('leafy');
    expect(toggleWord('leafy, sharp', 'Sharp')).toBe('leafy');
    expect(toggleWord('leafy', 'sharp')).toBe('leafy, sharp');
    expect(hasWord('Leafy, sharp', 'leafy')).toBe(true);
    expect(hasWord('leafy green', 'leafy')).toBe(false);
  });

  test('trade words are offered as far as they are not in the own list', () => {
    expect(tradeWords('citrus', [])).toContain('lemon');
    expect(tradeWords('citrus', ['Lemon'])).not.toContain('lemon');
  });
});

test('a colour family once given stays with the smell, also in a new vial of it', () => {
  const run = dipped(card);
  expect(familyOf(run.state(), card.id)).toBe('none');
  run.happen(1, 'typed', `family.${card.id}`, 'spice');
  kept(run);
  const anew = { ...vialOnShelf('CARD2'), contents: card.contents };
  takeIn([anew]);
  expect(familyOf(benchRun().state(), anew.id)).toBe('spice');
});

describe('sparing the nose', () => {
  const every = (seconds: number, times: number): number[] =>
    Array.from({ length: times }, (_, i) => i * seconds * 1000);

  test('half a minute between two, and silence after it', () => {
    expect(restHint([0], 10_000)).toContain('Half a minute');
    expect(restHint([0], 31_000)).toBe('');
    expect(restHint([], 0)).toBe('');
  });

  test('after six in a row a few minutes, after twelve in an hour enough', () => {
    expect(restHint(every(60, 6), 5 * 60_000 + 40_000)).toContain('Six in a row');
    expect(restHint(every(60, 6), 9 * 60_000)).toBe('');
    expect(restHint(every(240, 12), 50 * 60_000)).toContain('Twelve');
    expect(restHint(every(240, 12), 3 * 3600_000)).toBe('');
  });
});

describe('the verdict', () => {
  test('is about what was liked best together, unless another is chosen', () => {
    const run = dipped(card, hex, rose);
    noteStrips(run, 3, { liking: '5' });
    noteStrips(run, 4, { liking: '8' }, [card.id, rose.id]);
    noteStrips(run, 5, { liking: '9' }, [hex.id]); // one by itself is no layering
    expect(judged(run.state()).map(({ vial }) => vial.code)).toEqual(['CARD', 'ROSE']);
    expect(verdictLiking(run.state())).toBe(8); // as its note says
    run.happen(6, 'typed', 'verdict.vials', [card.id, hex.id, rose.id].join(' '));
    expect(verdictLiking(run.state())).toBe(5);
    run.happen(6, 'typed', 'verdict.liking', '6');
    expect(verdictLiking(run.state())).toBe(6);
    expect(judged(run.state()).map(({ vial }) => vial.code)).toEqual(['CARD', 'HEX3', 'ROSE']);
  });

  test('without a liking it is about the fan', () => {
    const run = dipped(card, hex, rose);
    noteStrips(run, 4, { words: 'odd' }, [card.id, rose.id]);
    expect(judged(run.state())).toHaveLength(3);
  });
});

describe('a liked layering becomes a formula', () => {
  test('shares start from strength times dips', () => {
    const run = dipped(card, hex); // 1 % and 0.1 %
    run.happen(1, 'typed', `dips.${hex.id}`, '2');
    const [a, b] = draftLines(run.state());
    expect(a!.share).toBeCloseTo((100 * 1) / 1.2, 9);
    expect(b!.share).toBeCloseTo((100 * 0.2) / 1.2, 9);
  });

  test('what is dropped or tried again asks for no draft', () => {
    const run = dipped(card, hex);
    run.happen(1, 'typed', 'verdict.decision', 'drop');
    expect(layer.steps(run.state()).map(({ key }) => key)).not.toContain('draft');
    expect(layer.keep(run.state())).toHaveLength(1);
  });

  test('it can be edited, a line of 0 is left out, and it comes from the layering', () => {
    const run = dipped(card, hex, rose);
    run.happen(1, 'typed', `draft.share.m-ROSE`, '0');
    run.happen(1, 'typed', `draft.share.m-CARD`, '7,5');
    run.happen(1, 'typed', 'draft.name', 'Orchard');
    const layering = kept(run);
    const [formula] = [...shelf.records.value.values()].filter(({ kind }) => kind === 'formula') as Formula[];
    expect(formula).toMatchObject({ name: 'Orchard', version: 1, from: [layering.id] });
    expect(formula!.root).toBe(formula!.id);
    expect(formula!.lines.map(({ material, share }) => [material, Math.round(share * 10) / 10])).toEqual([
      ['m-CARD', 7.5],
      ['m-HEX3', 4.8], // 0.1 of 2.1 parts of a hundred, as shown and kept with three digits
    ]);
  });

  test('all parts 0 is told in one sentence', () => {
    const run = dipped(card);
    run.happen(1, 'typed', 'verdict.decision', 'keep');
    run.happen(1, 'typed', 'draft.share.m-CARD', '0');
    run.happen(1, 'go', 'draft'); // as a run of the first version was left, where every one that was kept went on to it
    expect(stepOf(run).problem).toContain('All parts are 0');
  });

  test('a formula is made when it is asked for, and can be left away again', () => {
    const run = dipped(card, hex);
    run.happen(1, 'typed', 'verdict.decision', 'keep');
    run.happen(1, 'go', 'verdict');
    expect(stepOf(run)).toMatchObject({ done: 'Save' });
    expect(layer.keep(run.state())).toHaveLength(1);
    run.happen(1, 'typed', 'draft', 'yes');
    expect(layer.keep(run.state())).toHaveLength(2);
    run.happen(1, 'go', 'draft');
    run.happen(1, 'typed', 'draft', 'no');
    expect(stepOf(run)).toMatchObject({ key: 'draft', done: 'Save' });
    expect(layer.keep(run.state())).toHaveLength(1);
  });

  test('a second draft of the same materials is the next version of the first', () => {
    kept(dipped(card, hex));
    const layering = kept(dipped(hex, card));
    const versions = [...shelf.records.value.values()].filter(({ kind }) => kind === 'formula') as Formula[];
    const [first, second] = [...versions].sort((a, b) => a.version - b.version);
    expect(second).toMatchObject({ version: 2, root: first!.id, from: [layering.id, first!.id] });
    expect(find('formula', first!.id)!.version).toBe(1);
  });
});
