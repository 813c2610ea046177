import type { AnyRecord } from '../../../src/records/kind/kinds';
import { newRecord } from '../../../src/records/shelf';

/** Four materials of a drink, with CAS numbers that rules and solubilities know. */
const materials = [
  ['nutmeg', 'nutmeg oil', '8008-45-5', 'natural', 'liquid', 0.91],
  ['linalool', 'linalool', '78-70-6', 'substance', 'liquid', 0.86],
  ['maltol', 'maltol', '118-71-8', 'substance', 'solid', 1.3],
  ['vanillin', 'vanillin', '121-33-5', 'substance', 'solid', 1.06],
] as const;

/** Bottles fit for drinks, and one of linalool that is for the nose only. */
export function batchShelf(): AnyRecord[] {
  const bottleOf = (id: string, material: string, facts: object = {}) =>
    newRecord('bottle', {
      id,
      material,
      supplier: 'Saltmarsh Supplies',
      lot: `L-${id}`,
      grade: 'fit for drinks',
      amountG: 100,
      ...facts,
    } as never);
  return [
    ...materials.map(([id, name, cas, sort, form, gPerMl]) =>
      newRecord('material', {
        id,
        name,
        cas,
        sort,
        form,
        code: id.slice(0, 4).toUpperCase(),
        cautions: [],
        purity: 1,
        density: { gPerMl, atC: 20, source: 'made up for the test' },
      }),
    ),
    ...materials.map(([id]) => bottleOf(`b-${id}`, id, { pricePerG: 2 })),
    bottleOf('b-linalool-nose', 'linalool', { grade: 'smell only' }),
    newRecord('formula', {
      id: 'f1',
      name: 'Orchard',
      root: 'f1',
      version: 1,
      notes: '',
      from: ['lay'],
      lines: [
        { material: 'nutmeg', name: 'nutmeg oil', share: 4 },
        { material: 'linalool', name: 'linalool', share: 3 },
        { material: 'maltol', name: 'maltol', share: 2 },
        { material: 'vanillin', name: 'vanillin', share: 1 },
      ],
    }),
  ];
}

/** What is typed to plan 20 L of a clear drink: 50 mg/kg of the formula, 10 °Brix, in propylene glycol. */
export const clearPlan: Record<string, string> = {
  what: 'f1',
  dose: '50',
  litres: '20',
  brix: '10',
  abv: '0',
  dosage: '1',
  make: 'clear',
  carrier: 'propylene-glycol',
  'carrier.food': 'yes',
  fine: '0.001',
  coarse: '1',
};
