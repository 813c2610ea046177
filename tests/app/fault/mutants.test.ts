import { afterAll, beforeAll, expect, test, vi } from 'vitest';
import { closePageInMemory, openPageInMemory } from './pageInMemory';
import { wholeBackup } from './wholeBackup';

vi.mock('idb', () => import('./memoryDb'));
const root = openPageInMemory();
let whole: Awaited<ReturnType<typeof wholeBackup>>;

beforeAll(async () => {
  await (await import('./drawn')).openApp(root);
  whole = await wholeBackup();
});
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
    const held = await heldAgainst({ root, whole, count: COUNT, seed: 21, only: 'changed' });
    expect(held.wrong).toEqual([]);
    expect(held.restored).toBe(COUNT);
    expect(held.asStored).toBeGreaterThan(COUNT / 4);
  },
);

test('a formula without parts, or with none of anything, says so on its page and takes no other', async () => {
  const { fileOf } = await import('./mutants');
  const { drawEverything, restored } = await import('./drawn');
  const formulas = whole.records.filter(({ kind }) => kind === 'formula');
  for (const empty of [[], [{ material: 'none', name: 'none', share: 0 }]]) {
    const broken = {
      ...whole,
      records: whole.records.map((one) => (one.kind === 'formula' ? { ...one, lines: empty } : one)),
    };
    expect(await restored(fileOf(broken))).toBe('');
    expect(
      await drawEverything(
        root,
        formulas.map(({ id }) => String(id)),
      ),
    ).toEqual([]);
  }
});
