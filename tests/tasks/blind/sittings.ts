import { designOf, rightSample, type Design } from '../../../src/tasks/blind/design';
import { blind } from '../../../src/tasks/blind/task';
import { startWalking, type Walker } from '../walking';

const TWO = { seed: '20260504', 'sample.0': 'old lot', 'sample.1': 'new lot' };

/** A blind test begun, with two samples named. */
export function begin(test: string, more: Record<string, string> = {}): Walker {
  return startWalking(blind, { test, served: 'served', ...TWO, ...more });
}

/** How it is laid out. */
export function designIn(walk: Walker): Design {
  return designOf(walk.state())!;
}

/** Walks on to the first cup. */
export function toFirstCup(walk: Walker): void {
  while (!walk.step().key.startsWith('taste.')) walk.next();
}

/** Answers every set with what `choose` says and stops at the end. */
export function answerAll(walk: Walker, choose: (design: Design, i: number) => readonly number[]): void {
  toFirstCup(walk);
  while (walk.step().key !== 'reveal') {
    const [page, i] = walk.step().key.split('.');
    if (page === 'answer') walk.type(`choice.${i}`, choose(designIn(walk), Number(i)).join(' '));
    if (page === 'card') walk.type(`turned.${i}`, String(cardTaken(walk, Number(i))));
    walk.next();
  }
}

/** The card that the hand took for try i: the last of those left. */
export function cardTaken(walk: Walker, i: number): number {
  return designIn(walk).sets.slice(i).at(-1)!.card!;
}

/** The code of the right cup of a set. */
export function rightCode(design: Design, i: number): number {
  const set = design.sets[i]!;
  const asked = design.method.id === 'duo-trio' ? set.cups.slice(1) : set.cups;
  return asked.find(({ sample }) => sample === rightSample(design, set))!.code;
}

/** The code of a wrong one. */
export function wrongCode(design: Design, i: number): number {
  return design.sets[i]!.cups.find(({ sample }) => sample !== rightSample(design, design.sets[i]!))!.code;
}
