import { beforeEach, describe, expect, test } from 'vitest';
import { kinds } from '../../../src/records/kind/kinds';
import { readRecord } from '../../../src/records/kind/record';
import { newRecord, shelf, takeIn } from '../../../src/records/shelf';
import type { Test } from '../../../src/records/kind/test';
import type { Vial } from '../../../src/records/kind/vial';
import { answersOf } from '../../../src/tasks/blind/answers';
import { resultsOfTest } from '../../../src/tasks/blind/kept';
import { dropOf } from '../../../src/workshop/dropMass';
import { liquidOfVial } from '../../../src/workshop/onHand';
import type { Walker } from '../walking';
import { answerAll, begin, cardTaken, designIn, rightCode, toFirstCup, wrongCode } from './sittings';
import { vialOnShelf } from '../layer/strips';

beforeEach(() => void (shelf.records.value = new Map()));

/** A vial in a solvent whose bottle says food grade. */
function fitForDrinks(code: string): Vial {
  const vial = vialOnShelf(code);
  const fit = { ...vial, solvent: { ...vial.solvent!, food: true } };
  takeIn([fit]);
  return fit;
}

/** Walks to a step, taking what is preset. */
function to(walk: Walker, key: string): void {
  while (walk.step().key !== key) walk.next();
}

describe('alone, with nobody to serve', () => {
  const alone = (more: Record<string, string> = {}): Walker => begin('triangle', { served: 'alone', ...more });

  test('every order comes equally often on the cards, and each card has a code of its own', () => {
    const { sets, shuffle } = designIn(alone());
    expect(shuffle).toBe('cards');
    const words = sets.map(({ cups }) => cups.map(({ sample }) => 'AB'[sample]).join(''));
    for (const word of ['AAB', 'ABA', 'BAA', 'BBA', 'BAB', 'ABB'])
      expect(words.filter((one) => one === word)).toHaveLength(2);
    expect(new Set(sets.map(({ card }) => card)).size).toBe(12);
    expect(sets.every(({ cups }) => cups.map(({ code }) => code).join() === '1,2,3')).toBe(true);
  });

  test('the screen says what is balanced and what is chance', () => {
    const walk = alone();
    to(walk, 'card');
    expect(walk.step().more!.at(-1)).toBe('Balanced: each of the 6 orders comes twice.');
    walk.type('tries', '10');
    expect(walk.step().more!.at(-1)).toBe('Not quite balanced: 10 sets are no whole rounds of 6 orders; 12 would be.');
    walk.type('tries', '3');
    expect(walk.step().more!.at(-1)).toContain('too few to shuffle as a whole');
    walk.type('tries', '12');
    to(walk, 'sheet');
    expect(walk.step().more!.join(' ')).toContain('shuffle the cards, never the cups');
    expect(walk.step().more!.join(' ')).toContain('Random: which card you take when');
  });

  test('on a ladder it says that balance is not possible alone', () => {
    const walk = begin('threshold', { served: 'alone', top: '243' });
    to(walk, 'card');
    expect(walk.step().more!.join(' ')).toContain('When you test alone, a series cannot be balanced');
    to(walk, 'sheet');
    expect(walk.step().more!.join(' ')).toContain('Chance, not balanced: the place of the cup that holds it');
  });

  test('the answer is a place, locked before the card is turned over', () => {
    const walk = alone();
    toFirstCup(walk);
    expect(walk.step().say).toBe('Taste the first cup of set ‹1›.');
    expect(walk.step().more![0]).toContain('Take any card that is left');
    to(walk, 'answer.0');
    expect(() => walk.next()).toThrow('Tap one cup.');
    walk.type('choice.0', '2');
    walk.next();
    expect(walk.step().key).toBe('card.0');
    walk.type('choice.0', '3');
    expect(walk.state().typed['answer.0']).toBe('2');
    expect(() => walk.next()).toThrow('Tap the code of the card.');
    walk.type('turned.0', '99');
    expect(() => walk.next()).toThrow('Tap the code of the card.');
    expect(answersOf(walk.state(), designIn(walk))).toHaveLength(0);
    const card = cardTaken(walk, 0);
    walk.type('turned.0', String(card));
    walk.next();
    expect(walk.step().key).toBe('rest.0');
    expect(designIn(walk).sets[0]!.card).toBe(card);
    expect(designIn(walk).sets).toHaveLength(12);
    walk.back('card.0');
    expect(walk.step().say).toBe(`Set ‹1› was card ‹${card}›.`);
  });

  test('until the end no screen tells what was in a cup; then the cards tell it, in the order taken', () => {
    const walk = alone();
    toFirstCup(walk);
    const taken: number[] = [];
    let wrong = 4;
    while (walk.step().key !== 'reveal') {
      expect(JSON.stringify([walk.step().say, walk.step().more ?? []])).not.toMatch(/old lot|new lot/);
      const [page, i] = walk.step().key.split('.');
      if (page === 'answer') {
        // the hand takes the last card left; its right cup is known to the test alone
        const design = designIn(walk);
        const set = design.sets.find(({ card }) => card === cardTaken(walk, Number(i)))!;
        const there = { ...design, sets: { [Number(i)]: set } as unknown as typeof design.sets };
        const named = wrong-- > 0 ? wrongCode(there, Number(i)) : rightCode(there, Number(i));
        walk.type(`choice.${i}`, String(named));
      }
      if (page === 'card') {
        taken.push(cardTaken(walk, Number(i)));
        walk.type(`turned.${i}`, String(taken.at(-1)));
      }
      walk.next();
    }
    expect(walk.step().say).toBe('8 of 12 right: this nose tells old lot from new lot.');
    const [kept] = walk.keep() as [Test];
    expect(kept.sets.map(({ card }) => card)).toEqual(taken);
    expect(kept.served).toBe('alone');
    expect(readRecord(kinds.test, JSON.parse(JSON.stringify(kept)))).toMatchObject({ ok: true });
  });

  test('a duo-trio keeps its reference out of the answer, and liking is scored by place', () => {
    const duo = begin('duo-trio', { served: 'alone', tries: '4' });
    expect(designIn(duo).sets[0]!.cups.map(({ code }) => code)).toEqual([0, 1, 2]);
    const liked = begin('hedonic', { served: 'alone' });
    toFirstCup(liked);
    liked.type('like.0.0', '6');
    liked.next();
    liked.type('like.0.1', '3');
    liked.next();
    liked.next();
    expect(liked.state().typed['answer.0']).toBe('1 2');
    expect(liked.step().key).toBe('card.0');
  });
});

describe('a ranking whose order is expected', () => {
  const ranking = (more: Record<string, string> = {}): Walker =>
    begin('ranking', { 'sample.2': 'third', attribute: 'bitter', ...more });
  const expecting = { expected: 'yes', order: '2 0 1' };

  test('the order is asked for before the first sip, and has to hold every sample', () => {
    const walk = ranking();
    walk.type('expected', 'yes');
    expect(() => walk.next()).toThrow('Tap every sample once');
    walk.type('order', '2 0');
    expect(() => walk.next()).toThrow('Tap every sample once');
    walk.type('order', '2 0 1');
    walk.next();
    expect(walk.step().key).toBe('sheet');
  });

  test('six sittings in the expected order: L = 84 and p = 1 in 6⁶, one-sided (Page 1963); 79 were needed', () => {
    const walk = ranking(expecting);
    const place = [1, 2, 0]; // of each sample in the order expected
    answerAll(walk, (design, i) =>
      [...design.sets[i]!.cups].sort((a, b) => place[a.sample]! - place[b.sample]!).map(({ code }) => code),
    );
    expect(walk.step().say).toBe('The order you expected is there: third < old lot < new lot.');
    const [chance, l, any] = walk.step().results!;
    expect(chance!.unit).toBe('in a million');
    expect(chance!.amount.value).toBeCloseTo(1e6 / 6 ** 6, 6);
    expect(l!.amount.value).toBe(84); // 6 sittings · (1 + 4 + 9)
    expect(chance!.how.inputs.find(({ words }) => words.startsWith('Smallest L'))!.text).toBe('79'); // ISO 8587, 3 samples, 6 sittings, 5 %
    expect(any!.amount.value).toBeCloseTo(1e6 / 6 ** 5, 3); // Friedman beside it: any of the 3! orders
    expect((walk.keep()[0] as Test).expected).toEqual([2, 0, 1]);
  });

  test('the opposite order is clear, but not the one expected', () => {
    const walk = ranking(expecting);
    const place = [1, 0, 2];
    answerAll(walk, (design, i) =>
      [...design.sets[i]!.cups].sort((a, b) => place[a.sample]! - place[b.sample]!).map(({ code }) => code),
    );
    expect(walk.step().say).toBe('The order you expected is not shown: L is 60, 79 was needed.');
    expect(walk.step().results![0]!.amount.value).toBeGreaterThan(0.99);
  });

  test('with none expected Friedman’s test alone answers', () => {
    const walk = ranking();
    answerAll(walk, (design, i) => design.sets[i]!.cups.map(({ code }) => code));
    expect(walk.step().results).toHaveLength(1);
  });
});

describe('samples from the Shelf', () => {
  test('the result traces to what was compared, and names can still be typed', () => {
    const [card, hex] = [vialOnShelf('CARD'), vialOnShelf('HEX3')];
    const walk = begin('triangle', {
      'sample.0': 'CARD',
      'from.0': card.id,
      'sample.1': 'HEX3 of May',
      'from.1': hex.id,
    });
    expect(walk.step().ask!.map(({ help }) => help ?? '')[2]).toContain('From the Shelf: material of HEX3, 1 % w/v');
    answerAll(walk, (design, i) => [rightCode(design, i)]);
    const [kept] = walk.keep() as [Test];
    expect(kept.from).toEqual([card.id, hex.id]);
    expect(kept).toMatchObject({ samples: ['CARD', 'HEX3 of May'], sources: [card.id, hex.id] });
    expect(readRecord(kinds.test, JSON.parse(JSON.stringify(kept)))).toMatchObject({ ok: true });
  });

  test('what is smell only is smelled, and so is all beside it', () => {
    const vial = { ...vialOnShelf('SNIFF'), grade: 'smell only' as const };
    takeIn([vial]);
    const walk = begin('triangle', { 'sample.0': 'SNIFF', 'from.0': vial.id });
    to(walk, 'sheet');
    expect(walk.step().cautions![0]).toContain('smell only');
    walk.next();
    expect(walk.step().say).toMatch(/^Smell ‹\d{3}›\.$/);
    expect(JSON.stringify(walk.step())).not.toContain('Taste');
  });
});

describe('a threshold', () => {
  const LADDER = { top: '243', levels: '6', factor: '3' };
  const climb = (walk: Walker, missed: (i: number) => boolean): void =>
    answerAll(walk, (design, i) => [missed(i) ? wrongCode(design, i) : rightCode(design, i)]);

  test('is a result with its ±, its ladder and its runs, and the chance of a guesser', () => {
    const walk = begin('threshold', LADDER);
    climb(walk, (i) => i % 6 < 3);
    const [threshold, chance] = walk.step().results!;
    expect(threshold).toMatchObject({ label: 'Threshold', unit: 'mg/kg' });
    expect(threshold!.amount.value).toBeCloseTo(Math.sqrt(9 * 27), 9);
    const u = (Math.sqrt(243) * Math.log(3)) / Math.sqrt(12) / Math.SQRT2; // rectangle of one step, two runs
    expect(threshold!.amount.sources).toEqual([expect.objectContaining({ u: expect.closeTo(u, 9) })]);
    expect(threshold!.how.inputs.map(({ text }) => text)).toContain('✗ ✗ ✗ ✓ ✓ ✓');
    // two streaks of at least six steps together, of runs of six: Σ P(a)·P(b), a + b ≥ 6
    const p = (k: number) => (1 / 3) ** k * (k < 6 ? 2 / 3 : 1);
    let sum = 0;
    for (let a = 0; a <= 6; a++) for (let b = 0; b <= 6; b++) if (a + b >= 6) sum += p(a) * p(b);
    expect(chance!.amount.value).toBeCloseTo(sum, 12);
  });

  test('beside the ladder it is a bound only, and says on which side', () => {
    const never = begin('threshold', LADDER);
    climb(never, () => true);
    expect(never.step().say).toBe('Not noticed up to 243 mg/kg: the threshold lies above the series.');
    expect(never.step().results![0]!.label).toBe('Threshold, a bound only');
    const always = begin('threshold', LADDER);
    climb(always, () => false);
    expect(always.step().say).toBe('Noticed from the weakest step on, 1 mg/kg: the threshold lies below the series.');
  });

  test('a ladder in % w/w keeps its unit', () => {
    const walk = begin('threshold', { ...LADDER, unit: '% w/w', top: '8', factor: '2' });
    climb(walk, (i) => i % 6 < 4);
    expect(walk.step().say).toBe('Noticed from about 2.8 % w/w on.'); // √(2·4)
    expect(walk.keep()[0]).toMatchObject({ unit: '% w/w', steps: [0.25, 0.5, 1, 2, 4, 8] });
  });

  test('a ladder in drops is whole drops, and is told in mg/kg where the drink is known', () => {
    const vial = fitForDrinks('CARD');
    const walk = begin('threshold', { unit: 'drops', ladderVial: vial.id, cupG: '30', levels: '5' });
    expect(designIn(walk).levels).toEqual([1, 2, 4, 8, 16]);
    climb(walk, (i) => i % 5 < 2);
    expect(walk.step().say).toMatch(/^Noticed from about 2\.8 drops on, about \d+ mg\/kg\.$/);
    const [inDrops, inMgPerKg] = walk.step().results!;
    const drop = Number(inMgPerKg!.how.inputs.find(({ words }) => words === 'One drop')!.text.split(' ')[0]);
    const mass = inDrops!.amount.value * drop; // mg; the vial holds 1 % g/g
    expect(inMgPerKg!.unit).toBe('mg/kg');
    expect(inMgPerKg!.amount.value / ((mass * 0.01 * 1e6) / (30_000 + mass))).toBeCloseTo(1, 2);
    expect(inMgPerKg!.amount.sources.length).toBeGreaterThan(inDrops!.amount.sources.length);
    expect((walk.keep()[0] as Test).from).toEqual([vial.id]);
  });

  test('in drops the blanks get the solvent too, and what each step brings into a cup is said before it is filled', () => {
    const vial = fitForDrinks('CARD');
    const walk = begin('threshold', {
      unit: 'drops',
      ladderVial: vial.id,
      cupG: '30',
      levels: '6',
      dropper: 'typical',
    });
    to(walk, 'sheet');
    const [blank, food, steps] = walk.step().more!.slice(-3);
    expect(blank).toContain(`as many drops of plain ${vial.solvent!.name}`);
    expect(food).toBe(`Take ${vial.solvent!.name} from a bottle that is food grade: the blanks are tasted.`);
    const [, ppm, abv] = /32 drops ([\d.]+) mg\/kg, ([\d.]+) % ABV\.$/.exec(steps!)!;
    const mg = 32 * dropOf('typical', liquidOfVial(vial)).mgPerDrop.value; // of 1 % (g/g) in ethanol 96 %, 30 g of drink
    expect(Number(ppm)).toBeCloseTo((mg * 0.01 * 1e6) / (30_000 + mg), -1);
    expect(Number(abv)).toBeGreaterThan(1.2);
    expect(Number(abv)).toBeLessThan(2.4);
    const byMass = begin('threshold', { top: '243' });
    expect(byMass.step().more!.join(' ')).toContain('as much of what carries it');
  });

  test('more drops than anybody counts, and vials that are smell only, are refused', () => {
    const vial = fitForDrinks('CARD');
    const walk = begin('threshold', { unit: 'drops', ladderVial: vial.id, weakest: '10', levels: '8', factor: '3' });
    expect(() => walk.next()).toThrow('The strongest step would be 21870 drops');
    const sniff = { ...vialOnShelf('SNIFF'), grade: 'smell only' as const };
    takeIn([sniff]);
    const other = begin('threshold', { unit: 'drops', ladderVial: sniff.id });
    expect(() => other.next()).toThrow('choose one');
  });
});

test('a drink as tasted can be a sample', () => {
  const exact = (value: number) => ({ value, sources: [] });
  const tasting = newRecord('tasting', {
    base: { name: 'tonic', volumeMl: 100, brix: 8, abv: 0, densityGPerMl: 1.03 },
    doses: [{ vial: 'v', code: 'CARD', drops: 3, massG: exact(0.05) }],
    reached: [],
    verdict: '',
    liking: null,
    uses: [],
  });
  takeIn([tasting]);
  const walk = begin('triangle', { 'sample.0': 'tonic + CARD', 'from.0': tasting.id });
  expect(walk.step().ask![1]!.help).toContain('From the Shelf: tonic + CARD, drink of');
});

describe('in the Book', () => {
  const named: readonly (readonly [string, Record<string, string>])[] = [
    ['triangle', {}],
    ['duo-trio', { served: 'alone' }],
    ['preference', {}],
    ['ranking', { 'sample.2': 'third', attribute: 'bitter', expected: 'yes', order: '0 1 2' }],
    ['threshold', { top: '243' }],
  ];
  for (const [kind, typed] of named)
    test(`a kept ${kind} test shows the same numbers as on its last screen, each with how`, () => {
      const walk = begin(kind, typed);
      const asked = kind === 'ranking' ? 3 : 1;
      answerAll(walk, (design, i) =>
        design.sets[i]!.cups.slice(kind === 'duo-trio' ? 1 : 0)
          .slice(0, asked)
          .map(({ code }) => code),
      );
      const results = resultsOfTest(walk.keep()[0] as Test);
      expect(results).toEqual(walk.step().results);
      expect(results.every(({ how }) => how.words.length > 0 && how.inputs.length > 0)).toBe(true);
    });
});
