import { writeFileSync } from 'node:fs';
import { afterAll, beforeAll, expect, test, vi } from 'vitest';
import { closePageInMemory, openPageInMemory } from './pageInMemory';
import { wholeBackup } from './wholeBackup';

vi.mock('idb', () => import('./memoryDb'));
const root = openPageInMemory();

beforeAll(async () => (await import('./drawn')).openApp(root));
afterAll(async () => {
  await (await import('./drawn')).closeApp(root);
  closePageInMemory();
});

const COUNT = Number(process.env['MUTANTS'] ?? 10); // `npm run bench -- hold` tries 5,000
const SEED = Number(process.env['SEED'] ?? 5);
const file = process.env['MUTANTS_TOLD'];

test(
  `${COUNT} backups with something wrong in them: everything that is left of each is drawn, and nothing throws`,
  { timeout: 24 * 3_600_000 },
  async () => {
    const { heldAgainst } = await import('./held');
    const progress = (done: number, wrong: readonly string[]) =>
      file && done % 20 === 0 && writeFileSync(file, JSON.stringify({ done, wrong }, null, 1));
    const held = await heldAgainst({ root, whole: await wholeBackup(), count: COUNT, seed: SEED, progress });
    if (file) writeFileSync(file, JSON.stringify(held, null, 1));
    expect(held.wrong).toEqual([]);
    expect(held.restored).toBe(COUNT);
  },
);
