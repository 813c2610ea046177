import { measured } from '../../../src/core/number/measured';
import type { AnyRecord } from '../../../src/records/kind/kinds';
import { newRecord } from '../../../src/records/shelf';
import type { SolventCopy } from '../../../src/records/kind/solvent';

export const ethanol: SolventCopy = {
  id: 'ethanol-96',
  name: 'ethanol 96 %',
  density: { gPerMl: 0.8074, atC: 20, source: 'test' },
  food: true,
  dryOff: 'unknown', // so that nothing evaporates in the tests that use it
};

/** A vial of one material on the test shelf: 10 g at this strength (g/g, ± 1 % standard). */
export function vialOf(
  id: string,
  strength: number,
  facts: { material?: string; grade?: string; massG?: number } = {},
) {
  const { material = id, grade = 'fit for drinks', massG = 10 } = facts;
  const u = { id: `making:${id}`, words: `making of ${id}` };
  return newRecord('vial', {
    id,
    code: id.toUpperCase(),
    name: `${material} oil`,
    contents: [{ material, name: `${material} oil`, strength: measured(strength, strength * 0.01, u) }],
    label: { value: strength * 100, basis: '% w/w' },
    solvent: ethanol,
    massG: measured(massG, 0, u),
    densityGPerMl: 0.81,
    sizeMl: 15,
    grade: grade as 'smell only',
    madeOn: '2026-05-01',
    useBy: id === 'card' ? '2026-11-01' : '',
    supplier: 'Saltmarsh',
    lot: '1',
    uses: [],
  });
}

export const material = (id: string) =>
  newRecord('material', {
    id,
    name: `${id} oil`,
    code: id.toUpperCase(),
    sort: 'natural',
    form: 'liquid',
    cautions: [],
  });

/** A dropper that gives 15 mg of ethanol a drop, known to ± 2 % (standard), drops scattering by 6 %. */
export const pipette: AnyRecord[] = [
  newRecord('dropper', { id: 'pip', name: 'Pipette 1', tip: 'glass' }),
  newRecord('calibration', {
    id: 'cal',
    dropper: 'pip',
    liquid: { id: 'ethanol-96', name: 'ethanol 96 %' },
    readings: [],
    readabilityG: 0.001,
    mgPerDrop: measured(15, 0.3, { id: 'cal:repeatability', words: 'calibration' }),
    spread: 0.06,
  }),
];
