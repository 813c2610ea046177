import { beforeAll, describe, expect, test } from 'vitest';
import { exact } from '../../src/core/number/measured';
import { newRecord, shelf, takeIn } from '../../src/records/shelf';
import { catalogue, loadCatalogue } from '../../src/workshop/catalogue';
import type { JudgedMaterial } from '../../src/workshop/drinkable/judging';
import { listedAs } from '../../src/workshop/positiveLists';

const of = (id: string, cas: string, more: Partial<JudgedMaterial> = {}): JudgedMaterial => ({
  id,
  name: id,
  cas: cas === '' ? [] : [cas],
  mgPerKg: exact(1),
  constituents: [],
  natural: false,
  ...more,
});
const own = (id: string, cas: string) =>
  newRecord('material', { id, name: id, code: 'XX', cas, sort: 'substance', form: 'liquid', cautions: [] } as never);

test('while the catalogue is not here nothing is said', () => {
  catalogue.value = null;
  expect(listedAs([of('leaf', '928-96-1')], 'EU')).toEqual([]);
});

describe('with the catalogue', () => {
  beforeAll(async () => {
    shelf.records.value = new Map();
    takeIn(['leaf', 'oil', 'pinene oxide', 'benzyl alcohol'].map((id) => own(id, '')));
    await loadCatalogue();
  });

  test('cis-3-hexenol has its Union list number, FEMA number and section, the market’s own list first', () => {
    const [eu] = listedAs([of('leaf', '928-96-1'), of('leaf', '928-96-1')], 'EU');
    expect(eu).toEqual({ name: 'leaf', named: true, words: 'Union list FL 02.056 · FEMA 2563 · 21 CFR 172.515' });
    expect(listedAs([of('leaf', '928-96-1')], 'US')[0]!.words).toMatch(/^21 CFR 172\.515 · FEMA 2563/);
    expect(listedAs([of('leaf', '928-96-1'), of('leaf', '928-96-1')], 'EU')).toHaveLength(1);
  });

  test('an oil is never "not named": it is no substance', () => {
    const [oil] = listedAs([of('oil', '8008-56-8', { natural: true })], 'EU');
    expect(oil!.named).toBe(true);
    expect(oil!.words).toContain('21 CFR 172.230, 182.20');
    const unknown = listedAs([of('oil', '8000-00-0', { natural: true })], 'EU')[0]!;
    expect(unknown).toMatchObject({ named: true, words: 'oil or extract: no list of substances names it' });
  });

  test('a flavouring substance that the closed list does not hold is said to be so in the EU, never in the US', () => {
    const rows = [...catalogue.value!.rows.values()];
    const row = rows.find((one) => !one.botanical && !one.eu && one.cas)!;
    const substance = of('leaf', row.cas![0]);
    expect(listedAs([substance], 'EU')[0]).toMatchObject({ named: false, words: expect.stringContaining('not found') });
    expect(listedAs([substance], 'US')[0]!.named).toBe(true);
  });

  test('what the catalogue does not hold was not looked through', () => {
    expect(listedAs([of('leaf', '1-1-1')], 'EU')[0]).toMatchObject({
      named: true,
      words: 'not in the catalogue: look it up',
    });
  });

  test('a carrier is named as one; on the Shelf as a material it is a flavouring', () => {
    const carrier = (market: 'EU' | 'US') => listedAs([of('propylene-glycol', '57-55-6')], market)[0]!.words;
    expect(carrier('EU')).toContain('E 1520: 1000 mg/L from all sources');
    expect(carrier('US')).toContain('21 CFR 184.1666');
    expect(listedAs([of('solvent', '25395-31-7')], 'US')[0]!.words).toContain('no section known');
    expect(listedAs([of('benzyl alcohol', '100-51-6')], 'EU')[0]!.words).toContain('Union list FL 02.010');
    expect(listedAs([of('solvent', '100-51-6')], 'EU')[0]!.words).toContain('E 1519');
  });

  test('acids say quantum satis, other additives that their limits stand below', () => {
    expect(listedAs([of('citric-acid', '77-92-9')], 'EU')[0]!.words).toContain('quantum satis');
    expect(listedAs([of('sodium-benzoate', '532-32-1')], 'EU')[0]!.words).toBe('an additive: its limits are below');
  });
});
