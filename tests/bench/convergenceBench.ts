import { vitest } from './vitestRun';

/** Random days of work on two and three devices, with right and wrong clocks: whether all come to the same. After the name: how many. */
export async function convergenceBench(histories = '2200'): Promise<void> {
  const passed = vitest('long', 'tests/records/union/convergence.long.test.ts', { HISTORIES: histories });
  console.log(JSON.stringify({ bench: 'convergence', histories: Number(histories), passed }));
}
