import { describe, expect, test } from 'vitest';
import { bradleyTerry } from '../../../src/core/sensory/bradleyTerry';
import reference from '../../reference/preference.json';
import { seeded } from '../seeded';
import { Refusal } from '../../../src/core/text/refusal';

function fromFirst(logWorth: readonly number[]): number[] {
  return logWorth.map((one) => one - logWorth[0]!);
}

function worst(found: readonly number[], printed: readonly number[]): number {
  return Math.max(...found.map((one, i) => Math.abs(one - printed[i]!)));
}

function noWins(n: number): number[][] {
  return Array.from({ length: n }, () => new Array<number>(n).fill(0));
}

describe('Bradley–Terry', () => {
  test('citations between four journals: 0, −2.9491, −0.4796, 0.2690, deviance 4.293 (Agresti 2002 p. 448)', () => {
    const { wins_cited_row_over_citing_col: cited, published } = reference.bradley_terry_citations;
    const { logWorth } = bradleyTerry(cited, 0);
    const off = worst(fromFirst(logWorth), published.log_ability);
    console.info(`Bradley–Terry, journals: worst ${off.toExponential(1)} of 4 printed log-worths`);
    expect(off).toBeLessThan(0.5e-4);
    let deviance = 0;
    for (let i = 0; i < 4; i++)
      for (let j = 0; j < i; j++) {
        const [a, b] = [cited[i]![j]!, cited[j]![i]!];
        const p = 1 / (1 + Math.exp(logWorth[j]! - logWorth[i]!));
        deviance += 2 * (a * Math.log(a / ((a + b) * p)) + b * Math.log(b / ((a + b) * (1 - p))));
      }
    expect(deviance).toBeCloseTo(published.residual_deviance, 3);
  });

  test('five verdicts with half a ghost win: 0, 0.5184185, 0.1354707, −1.1537565 (PlackettLuce, printed)', () => {
    const wins = noWins(4);
    for (const verdict of reference.plackett_luce_toy.rankings) {
      const [better, worse] = verdict.split('>').map((letter) => 'ABCD'.indexOf(letter)) as [number, number];
      wins[better]![worse]!++;
    }
    const off = worst(
      fromFirst(bradleyTerry(wins, 0.5).logWorth),
      reference.plackett_luce_toy['published_npseudo_0.5_log_worth'],
    );
    console.info(`Bradley–Terry with ghost, toy verdicts: worst ${off.toExponential(1)} of 4 printed log-worths`);
    expect(off).toBeLessThan(2e-7); // the printed ones stop at their own tolerance in the 7th digit
    const without = wins.slice(0, 3).map((row) => row.slice(0, 3));
    expect(
      worst(fromFirst(bradleyTerry(without, 0).logWorth), reference.plackett_luce_toy.published_MLE_without_D),
    ).toBeLessThan(0.5e-4);
  });

  test('ties as half wins: puddings and flavour strengths agree with an independent fit', () => {
    const pudding = noWins(6);
    for (const [i, j, , better, worse, tie] of reference.davidson_ties_pudding.rows_i_j_n_wi_wj_tie) {
      pudding[i! - 1]![j! - 1]! += better! + tie! / 2;
      pudding[j! - 1]![i! - 1]! += worse! + tie! / 2;
    }
    expect(
      worst(fromFirst(bradleyTerry(pudding, 0).logWorth), reference.davidson_ties_pudding.half_win_BT_log_ability),
    ).toBeLessThan(1e-9);
    const {
      pairs_row_col: pairs,
      win_col: win,
      loss_col: loss,
      tie,
      computed_half_win_log_ability_ref1: fitted,
    } = reference.springall_flavour_strength;
    const flavour = noWins(9);
    pairs.forEach(([row, col], at) => {
      flavour[col! - 1]![row! - 1]! += win[at]! + tie[at]! / 2;
      flavour[row! - 1]![col! - 1]! += loss[at]! + tie[at]! / 2;
    });
    expect(worst(fromFirst(bradleyTerry(flavour, 0).logWorth), fitted)).toBeLessThan(1e-9);
  });

  test('a vial that only ever won has no end to its worth, but with the ghost it has', () => {
    const wins = [
      [0, 5],
      [0, 0],
    ];
    expect(() => bradleyTerry(wins, 0)).toThrow('some vials only ever won or lost');
    expect(bradleyTerry(wins).logWorth.every(Number.isFinite)).toBe(true);
  });

  test('the standard errors are what a hundred replays show', () => {
    const random = seeded(1952);
    const truth = [0.8, 0, -0.8];
    const found: number[][] = [];
    let said = 0;
    for (let game = 0; game < 300; game++) {
      const wins = noWins(3);
      for (let i = 0; i < 3; i++)
        for (let j = 0; j < i; j++)
          for (let k = 0; k < 30; k++)
            if (random() < 1 / (1 + Math.exp(truth[j]! - truth[i]!))) wins[i]![j]!++;
            else wins[j]![i]!++;
      const { logWorth, standardError } = bradleyTerry(wins, 0);
      found.push([...logWorth]);
      said += standardError[0]! / 300;
    }
    const mean = found.reduce((sum, row) => sum + row[0]!, 0) / 300;
    const sd = Math.sqrt(found.reduce((sum, row) => sum + (row[0]! - mean) ** 2, 0) / 299);
    expect(sd / said).toBeGreaterThan(0.85);
    expect(sd / said).toBeLessThan(1.15);
  });

  test('nothing compared is worth nothing, and negative wins are refused', () => {
    expect(bradleyTerry([])).toEqual({ logWorth: [], standardError: [] });
    expect(bradleyTerry(noWins(3)).logWorth).toEqual([0, 0, 0]);
    expect(() =>
      bradleyTerry([
        [0, -1],
        [0, 0],
      ]),
    ).toThrow(Refusal);
  });
});
