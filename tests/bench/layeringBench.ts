import { nextLayering } from '../../src/core/sensory/covering';
import { pairCoverage } from '../../src/core/sensory/pairCoverage';
import { coverings } from '../../src/tables/coverings';
import { seeded } from '../core/seeded';

const VIALS = 30;
const DONE = 200;
const RUNS = 15; // measured, after as many to warm up
const LIMIT_MS = 50;

/**
 * The next layering for 30 vials with 200 layerings done, as the screen asks for it: pairs counted, then proposed. The
 * done layerings are drawn at random, of 2 to 5 strips; from all vials they leave few pairs open, the other two cases leave many.
 */
export async function layeringBench(): Promise<void> {
  for (const size of [2, 3, 4, 5]) {
    for (const done of ['any vials', 'twos only', 'half of the vials'] as const) {
      const vials = Array.from({ length: VIALS }, (_, i) => `vial ${i + 1}`);
      const layerings = layeringsDone(vials, done);
      const ask = () => nextLayering(pairCoverage(vials, layerings), size, coverings);
      for (let i = 0; i < RUNS; i++) ask();
      const times = Array.from({ length: RUNS }, () => timed(ask)).sort((a, b) => a - b);
      const { left } = pairCoverage(vials, layerings);
      const { planned, atLeast, newPairs } = ask();
      const facts = { vials: VIALS, done: DONE, of: done, size, open: left.length, newPairs, planned, atLeast };
      const medianMs = Number(times[RUNS >> 1]!.toPrecision(3));
      const worstMs = Number(times.at(-1)!.toPrecision(3));
      console.log(
        JSON.stringify({ bench: 'next layering', ...facts, medianMs, worstMs, within: medianMs <= LIMIT_MS }),
      );
    }
  }
}

function layeringsDone(vials: readonly string[], of: 'any vials' | 'twos only' | 'half of the vials'): string[][] {
  const random = seeded(30);
  const pool = of === 'half of the vials' ? vials.slice(0, VIALS / 2) : vials;
  return Array.from({ length: DONE }, () => {
    const size = of === 'twos only' ? 2 : 2 + Math.floor(random() * 4);
    const left = [...pool];
    return Array.from({ length: size }, () => left.splice(Math.floor(random() * left.length), 1)[0]!);
  });
}

function timed(work: () => unknown): number {
  const start = performance.now();
  work();
  return performance.now() - start;
}
