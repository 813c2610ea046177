import { describe, expect, test } from 'vitest';
import { randomFrom } from '../../../src/core/number/randomFrom';
import { panelPower, panelResult, type NoseCount } from '../../../src/core/sensory/panel';
import { testResult } from '../../../src/core/sensory/discrimination';

const each = (noses: number, right: number, tries: number): NoseCount[] =>
  Array.from({ length: noses }, () => ({ right, tries }));

describe('a panel', () => {
  test('of noses with one try each is the binomial of the standards', () => {
    const counts = [...each(8, 1, 1), ...each(4, 0, 1)];
    const { p, share } = testResult({ test: 'triangle', tries: 12, risk: 0.05 }, 8);
    const found = panelResult(counts, 1 / 3);
    expect(found.byGuessing).toBeCloseTo(p, 12);
    expect(found.ofPeople).toBeCloseTo(p, 12);
    expect(found.share!.low).toBeCloseTo(share.low, 12);
    expect([found.worth, found.likeness]).toEqual([12, 0]);
  });

  test('of one nose says nothing of people, however often it tried', () => {
    const found = panelResult([{ right: 30, tries: 30 }], 1 / 3);
    expect([found.ofPeople, found.share, found.worth]).toEqual([null, null, 1]);
    expect(found.byGuessing).toBeLessThan(1e-12);
  });

  test('in which one nose of four tells all and the others guess: these noses differ from guessing, people are not shown to', () => {
    const found = panelResult([{ right: 12, tries: 12 }, ...each(3, 4, 12)], 1 / 3);
    expect(found.byGuessing).toBeLessThan(0.02); // 24 of 48
    expect(found.ofPeople!).toBeGreaterThan(0.1);
    expect(found.share!.low).toBe(0);
    expect(found.worth).toBeLessThan(15); // of 48 tries
    expect(found.worth).toBeGreaterThan(4 - 1e-9);
  });

  test('shares and limits by hand: 6, 7, 8 and 9 of 12 in duo-trios', () => {
    const found = panelResult(
      [6, 7, 8, 9].map((right) => ({ right, tries: 12 })),
      1 / 2,
    );
    const mean = 7.5 / 12;
    const error = Math.sqrt(Math.max(1.29099 ** 2 / 144, 0.25 / 12) / 4); // guessing scatters more than these four
    expect(found.share!.value).toBeCloseTo((mean - 0.5) / 0.5, 6);
    expect(found.share!.high).toBeCloseTo((mean + 3.18245 * error - 0.5) / 0.5, 4);
    expect(found.ofPeople).toBeCloseTo(0.09, 1);
  });

  test('is rarely wrong where all only guess, with noses that repeat', () => {
    const random = randomFrom(7);
    const played = Array.from({ length: 600 }, () => {
      const counts = Array.from({ length: 6 }, () => ({
        tries: 4,
        right: Array.from({ length: 4 }, random).filter((x) => x < 1 / 3).length,
      }));
      return panelResult(counts, 1 / 3).ofPeople! <= 0.05;
    });
    expect(played.filter(Boolean).length / 600).toBeLessThan(0.05);
  });

  test('finds more with more noses, hardly with more tries', () => {
    const at = (noses: number, tries: number) => panelPower({ noses, tries, guess: 1 / 3, risk: 0.05 }, 0.4);
    expect(at(1, 60)).toBe(0);
    expect(at(24, 4)).toBeGreaterThan(at(12, 4) + 0.15);
    expect(at(12, 16) - at(12, 8)).toBeLessThan(0.05);
  });

  test('refuses counts that cannot be', () => {
    expect(() => panelResult([], 0.5)).toThrow('a panel needs noses');
    expect(() => panelResult([{ right: 3, tries: 2 }], 0.5)).toThrow('no more right than tries');
  });
});
