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

const COUNT = 25;

test(
  `${COUNT} backups with something wrong in them leave no page blank and throw nothing`,
  { timeout: 600_000 },
  async () => {
    const { heldAgainst } = await import('./held');
    const whole = await wholeBackup();
    const held = await heldAgainst({ root, whole, count: COUNT, seed: 21, only: 'changed' });
    expect(held.wrong).toEqual([]);
    expect(held.restored).toBe(COUNT);
    expect(held.asStored).toBeGreaterThan(COUNT / 4);
  },
);
