import { expect, test } from 'vitest';
import { describe as described } from '../../../src/app/describe/describe';
import { thingOf } from '../../../src/app/record/thing';
import { exact } from '../../../src/core/number/measured';
import { newRecord, takeIn } from '../../../src/records/shelf';
import { vialRecord } from '../../browser/benchRecords';

const solvent = { name: 'own', density: { gPerMl: 1, atC: 20, source: '' }, food: true, dryOff: 'unknown' as const };
const vial = { ...vialRecord({ code: 'SAGE', name: 'sage' }), id: 'v', solvent: { id: 'own', ...solvent } };

test('a drink with a solvent of which no one has said the alcohol does not show that of its base as its own', () => {
  const drink = newRecord('tasting', {
    base: { name: 'water', volumeMl: 100, brix: 0, abv: 0, densityGPerMl: 1 },
    doses: [{ vial: 'v', code: 'SAGE', drops: 40, massG: exact(1) }],
    reached: [],
    verdict: '',
    liking: null,
    uses: [{ id: 'v', massG: 1, how: 'counted' }],
  } as never);
  const under = () => thingOf(drink, described(drink)).under.join(' ');
  takeIn([newRecord('solvent', { id: 'own', ...solvent } as never), vial as never]);
  expect(under()).toContain('100 mL, 0 °Brix, alcohol not known');
  takeIn([newRecord('solvent', { id: 'own', ...solvent, abv: 0 } as never)]);
  expect(under()).toContain('100 mL, 0 °Brix, 0 % ABV');
});
