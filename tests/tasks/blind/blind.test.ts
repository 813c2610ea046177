import { describe, expect, test } from 'vitest';
import { kinds } from '../../../src/records/kind/kinds';
import { readRecord } from '../../../src/records/kind/record';
import type { Test } from '../../../src/records/kind/test';
import { outcomeOf } from '../../../src/tasks/blind/outcome';
import { powerWords } from '../../../src/tasks/blind/powerWords';
import { blind } from '../../../src/tasks/blind/task';
import { fold } from '../../../src/tasks/engine/fold';
import { problemsOf } from '../../../src/tasks/engine/leaving';
import { answerAll, begin, designIn, rightCode, toFirstCup, wrongCode } from './sittings';

describe('laying out a blind test', () => {
  test('the same draw gives the same codes and orders, however often it is looked at', () => {
    expect(designIn(begin('triangle'))).toEqual(designIn(begin('triangle')));
    expect(designIn(begin('triangle')).sets).not.toEqual(designIn(begin('triangle', { seed: '7' })).sets);
  });

  test('a method that is none leaves the card, which asks for one and goes no further', () => {
    const run = fold([{ run: 'r', seq: 0, at: '', type: 'typed', key: 'test', text: 'nothing' }]);
    const card = blind.steps(run)[0]!;
    expect(card.key).toBe('card');
    expect(problemsOf(card, run)['test']).toBe('“Test”: choose one.');
  });

  test('codes have three digits and never repeat', () => {
    const codes = designIn(begin('triangle', { tries: '60' })).sets.flatMap(({ cups }) => cups.map(({ code }) => code));
    expect(codes).toHaveLength(180);
    expect(new Set(codes).size).toBe(180);
    expect(codes.every((code) => code >= 100 && code <= 999)).toBe(true);
  });

  test('twelve triads hold each of the six orders twice (ISO 4120)', () => {
    const words = designIn(begin('triangle')).sets.map(({ cups }) => cups.map(({ sample }) => 'AB'[sample]).join(''));
    const times = ['AAB', 'ABA', 'BAA', 'BBA', 'BAB', 'ABB'].map((word) => words.filter((one) => one === word).length);
    expect(times).toEqual([2, 2, 2, 2, 2, 2]);
  });

  test('before the first sip it says what the tries can show (ISO 4120: 8 of 12; exact power)', () => {
    expect(powerWords('triangle', 12, 0.05)[0]).toBe('‹8 of 12› right show a difference.');
    expect(powerWords('triangle', 12, 0.05)[1]).toContain('16 sets find it with 87 %: the fewest with 80 %'); // first n at pd 50 %, beta 0.20
    expect(powerWords('triangle', 2, 0.05)[0]).toContain('too few');
  });

  test('samples of the same name, or too few, are told in one sentence', () => {
    const step = (typed: Record<string, string>) =>
      blind.steps(fold(startedWith(typed))).find(({ key }) => key === 'card')!;
    expect(step({ test: 'triangle', 'sample.0': 'a', 'sample.1': 'a' }).problem).toContain('same name');
    expect(step({ test: 'ranking', 'sample.0': 'a', 'sample.1': 'b' }).problem).toContain('three samples');
    expect(step({ test: 'ranking', 'sample.0': 'a', 'sample.1': 'b', 'sample.2': 'c' }).problem).toBeUndefined();
  });
});

function startedWith(typed: Record<string, string>) {
  return Object.entries(typed).map(([key, text], seq) => ({
    run: 'r',
    seq,
    at: '',
    type: 'typed' as const,
    key,
    text,
  }));
}

describe('tasting', () => {
  test('one cup a screen, then the question, then a rest', () => {
    const walk = begin('triangle', { tries: '2' });
    toFirstCup(walk);
    expect(walk.keys().filter((key) => key.startsWith('taste'))).toEqual(['taste.0.0', 'taste.0.1', 'taste.0.2']);
    for (let k = 0; k < 3; k++) walk.next();
    expect(walk.step().say).toBe('Which one is odd?');
    expect(() => walk.next()).toThrow('Tap one code.');
    walk.type('choice.0', String(rightCode(designIn(walk), 0)));
    walk.next();
    expect(walk.step().key).toBe('rest.0');
    walk.next();
    expect(walk.step().key).toBe('taste.1.0');
  });

  test('the screens of the taster never say what is in a cup', () => {
    const walk = begin('triangle', { tries: '3' });
    toFirstCup(walk);
    while (walk.step().key !== 'reveal') {
      const told = JSON.stringify([walk.step().say, walk.step().more ?? []]);
      expect(told).not.toMatch(/old lot|new lot/);
      const [page, i] = walk.step().key.split('.');
      if (page === 'answer') walk.type(`choice.${i}`, String(wrongCode(designIn(walk), Number(i))));
      walk.next();
    }
  });

  test('an answer once locked stays, whatever is tapped later', () => {
    const walk = begin('triangle', { tries: '2' });
    toFirstCup(walk);
    for (let k = 0; k < 3; k++) walk.next();
    const [right, wrong] = [rightCode(designIn(walk), 0), wrongCode(designIn(walk), 0)];
    walk.type('choice.0', String(wrong));
    walk.next();
    walk.back('answer.0');
    expect(walk.step().say).toContain('stays so');
    walk.type('choice.0', String(right));
    walk.next();
    expect(walk.state().typed['answer.0']).toBe(String(wrong));
    expect(walk.keys()).not.toContain('plan'); // and the design stands
    expect(() => walk.keep()).toThrow('Not every set');
  });

  test('alone, cups are told by place and codes are read only after the decision', () => {
    const walk = begin('triangle', { served: 'alone', tries: '1' });
    toFirstCup(walk);
    expect(walk.step().say).toBe('Taste the first cup of set ‹1›.');
    for (let k = 0; k < 3; k++) walk.next();
    expect(walk.step().more![0]).toContain('turn that cup over');
  });
});

describe('what comes out', () => {
  test('8 of 12 triads right show a difference, p = 0.0188 (binomial, ISO 4120)', () => {
    const walk = begin('triangle');
    answerAll(walk, (design, i) => [i < 8 ? rightCode(design, i) : wrongCode(design, i)]);
    expect(walk.step().say).toBe('8 of 12 right: this nose tells old lot from new lot.');
    expect(walk.step().results![0]!.amount.value).toBeCloseTo(0.018759, 5); // Σ C(12,x) 2^(12−x) / 3^12, x ≥ 8: 9969/531441
    const [kept] = walk.keep() as [Test];
    const [chance, share] = walk.step().results!;
    const texts = chance!.how.inputs.map(({ text }) => text);
    // power at half of the tries told: P(X ≥ 8) for X binomial(12, 2/3) = 335 616 / 531 441; p = 9969 / 531 441
    expect(texts).toEqual(['8 of 12', '1 in 3', '5 %', '8 of 12', '63.2 %', '0.018758432']);
    // Clopper–Pearson: 8 or more of 12 has 2.5 % at 34.89 %, 8 or fewer at 90.08 %; told: (x − 1/3) / (2/3)
    expect(share!.how.inputs.at(-1)!.text).toBe('2.33 to 85.1 %');
    expect(share!.amount.value).toBeCloseTo(50, 9);
    expect(kept).toMatchObject({ kind: 'test', test: 'triangle', name: 'Triangle · old lot, new lot' });
    expect(readRecord(kinds.test, JSON.parse(JSON.stringify(kept)))).toMatchObject({ ok: true });
  });

  test('7 of 12 do not, and it says that this is not the same as alike', () => {
    const walk = begin('triangle');
    answerAll(walk, (design, i) => [i < 7 ? rightCode(design, i) : wrongCode(design, i)]);
    expect(walk.step().say).toBe('7 of 12 right: no difference shown; 8 were needed.');
    expect(walk.step().more).toContain('Not shown is not the same as alike.');
  });

  test('fewer right than guessing gives is a hint at a mix-up', () => {
    const walk = begin('triangle', { tries: '4' });
    answerAll(walk, (design, i) => [wrongCode(design, i)]);
    expect(walk.step().more!.join()).toContain('mix-up');
  });

  test('in a duo-trio the cup like the reference is right', () => {
    const walk = begin('duo-trio', { tries: '6' });
    answerAll(walk, (design, i) => [rightCode(design, i)]);
    expect(walk.step().say).toContain('6 of 6 right');
  });

  test('a preference has no right answer and counts both ways', () => {
    const walk = begin('preference');
    answerAll(walk, (design, i) => [design.sets[i]!.cups.find(({ sample }) => sample === (i < 11 ? 1 : 0))!.code]);
    expect(walk.step().say).toBe('new lot is liked better: 11 of 12.');
    expect(walk.step().results![0]!.amount.value).toBeCloseTo((2 * 13) / 4096, 9);
  });

  test('six sittings that all rank alike show the order, least first', () => {
    const walk = begin('ranking', { 'sample.2': 'third', attribute: 'bitter' });
    answerAll(walk, (design, i) =>
      [...design.sets[i]!.cups].sort((a, b) => a.sample - b.sample).map(({ code }) => code),
    );
    expect(walk.step().say).toBe('They differ, in this order.');
    expect(walk.step().more![0]).toContain('old lot (6), new lot (12), third (18)');
    expect(walk.step().results![0]!.amount.value).toBeCloseTo(1e6 / 6 ** 5, 3); // 3! of the 3!^6 equal orders
  });

  test('a threshold is the mean between the last step missed and the next, over both runs (ASTM E679 type)', () => {
    const walk = begin('threshold', { top: '243', levels: '6', factor: '3' });
    expect(designIn(walk).levels.map(Math.round)).toEqual([1, 3, 9, 27, 81, 243]);
    answerAll(walk, (design, i) => [i % 6 < 3 ? wrongCode(design, i) : rightCode(design, i)]);
    expect(walk.step().say).toBe('Noticed from about 16 mg/kg on.'); // √(9·27) = 15.6
  });

  test('liking is told by its median, and one sitting after another', () => {
    const walk = begin('hedonic', { tries: '6' });
    toFirstCup(walk);
    expect(() => walk.next()).toThrow('Tap how you like it first.');
    while (walk.step().key !== 'reveal') {
      const [page, i, k] = walk.step().key.split('.');
      const cup = page === 'taste' && designIn(walk).sets[Number(i)]!.cups[Number(k)]!;
      if (cup) walk.type(`like.${i}.${k}`, cup.sample === 0 ? '4' : '7');
      walk.next();
    }
    expect(walk.step().say).toBe('They are not liked alike.');
    expect(walk.step().more![0]).toContain('old lot 4, new lot 7');
    expect((walk.keep()[0] as Test).sets[0]!.liking).toHaveLength(2);
  });

  test('a guesser is called a taster in no more than 5 of 100 tests', () => {
    let state = 1;
    const guess = () => (state = (state * 48271) % 2147483647) / 2147483647; // minimal standard generator
    let called = 0;
    for (let i = 0; i < 400; i++) {
      const design = designIn(begin('triangle', { seed: String(i) }));
      const answers = design.sets.map(({ cups }) => ({ codes: [cups[Math.floor(guess() * 3)]!.code], liking: [] }));
      if (outcomeOf(design, answers).sentence.includes('tells')) called++;
    }
    expect(called / 400).toBeLessThan(0.05); // exact 1.9 %; 3.9 % would be three standard deviations up
    expect(called).toBeGreaterThan(0);
  });
});
