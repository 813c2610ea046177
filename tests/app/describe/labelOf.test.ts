import { describe, expect, test } from 'vitest';
import { labelOf } from '../../../src/app/describe/labelOf';
import { jobOf, labelSetUp } from '../../../src/app/label/labelSetUp';
import { newRecord, takeIn } from '../../../src/records/shelf';
import { codeTextOf, shortIdOf, spacedShortId } from '../../../src/records/kind/shortId';
import { burns } from '../../../src/workshop/burns';
import { meaningOf } from '../../../src/tasks/screen/LabelCheck';
import { vialRecord } from '../../browser/benchRecords';

function wordsOn(label: ReturnType<typeof labelOf>): string {
  return label.content.paragraphs
    .flat()
    .map(({ text }) => text.replaceAll('\u00a0', ' '))
    .join(' | ');
}

describe('the label of a vial', () => {
  const card = vialRecord({ code: 'CARD', name: 'cardamom oil' });
  takeIn([card]);

  test('says what it is, how strong with ±, in what, since when, until when, from whom, and its short id', () => {
    expect(wordsOn(labelOf(card, 'vial'))).toBe(
      'CARD | 1 % | (1.05 ± 0.11) % w/v | cardamom oil | made 2026-05-04 | use by 2027-05-04 | fit for drinks | ' +
        `in ethanol 96 % vol | Northgate Botanicals (made up) | lot CARD-17 | ${spacedShortId(shortIdOf(card.id))}`,
    );
  });

  test('says SMELL ONLY, in white on black, when its solvent is none for drinks, whatever was written on it', () => {
    const denatured = vialRecord({ code: 'HEX3', name: 'cis-3-hexenol', solvent: 'ethanol-denatured' });
    takeIn([denatured]);
    expect(denatured.grade).toBe('fit for drinks');
    const grade = labelOf(denatured, 'vial').content.paragraphs[1]![0]!;
    expect(wordsOn(labelOf(denatured, 'vial'))).not.toContain('fit for drinks');
    expect([grade.text, grade.face, grade.rank]).toEqual(['SMELL ONLY', 'badge', 0]);
  });

  test('says it too when only the vial it was made from is smell only', () => {
    const parent = vialRecord({ code: 'IPA1', name: 'a base', solvent: 'isopropanol-99', grade: 'smell only' });
    const child = {
      ...vialRecord({ code: 'IPA2', name: 'thinned again', solvent: 'propylene-glycol' }),
      uses: [{ id: parent.id, massG: 1 }],
    };
    takeIn([parent, child]);
    expect(wordsOn(labelOf(child, 'vial'))).toContain('SMELL ONLY');
  });

  test('of several materials counts them and gives their strength together', () => {
    const [part] = card.contents;
    const trial = { ...card, contents: [part!, { ...part!, material: 'm-2', name: 'rose base' }] };
    expect(wordsOn(labelOf(trial, 'vial'))).toContain('of 2 materials in ethanol');
    expect(wordsOn(labelOf(trial, 'vial'))).toContain('(2.09 ± 0.23) % w/v');
  });

  test('leaves out what is not known', () => {
    const bare = { ...card, useBy: '', supplier: '', lot: '', solvent: null };
    expect(wordsOn(labelOf(bare, 'vial'))).not.toMatch(/use by|lot|\| in /);
  });

  test('has a ring for each tenfold step below 10 %, by what its label says', () => {
    const rings = (value: number, basis: string) => labelOf({ ...card, label: { value, basis } }, 'vial').content.rings;
    expect([rings(10, '% w/v'), rings(1, '% w/v'), rings(0.1, '% w/w'), rings(100, 'mg/kg')]).toEqual([0, 1, 2, 3]);
    expect(labelOf({ ...card, sort: 'trial' as const }, 'vial').content.rings).toBe(0);
  });

  test('on a strip is two lines without a code', () => {
    const { content } = labelOf(card, 'strip');
    expect(content.paragraphs.map((spans) => spans.map(({ text }) => text.replaceAll('\u00a0', ' ')))).toEqual([
      ['CARD', '1 %'],
      ['cardamom oil', 'made 2026-05-04', 'fit for drinks'],
    ]);
    expect([content.codeModules, content.flame]).toEqual([null, false]);
  });
});

describe('the label of a bottle', () => {
  test('says the material, that it is neat, supplier and lot', () => {
    const material = newRecord('material', {
      name: 'rose base',
      code: 'ROS',
      sort: 'natural',
      form: 'liquid',
      cautions: [],
    });
    const bottle = newRecord('bottle', {
      material: material.id,
      supplier: 'Bay & Bell (made up)',
      lot: '44',
      grade: 'smell only' as const,
    });
    takeIn([material, bottle]);
    expect(wordsOn(labelOf(bottle, 'vial'))).toContain(
      'ROS | neat | SMELL ONLY | rose base | Bay & Bell (made up) | lot 44',
    );
  });
});

describe('the label of a batch', () => {
  const sure = (value: number) => ({ value, sources: [] });
  const weighed = (into: 'concentrate' | 'syrup', id: string, lot: string, g: number) => ({
    into,
    id,
    name: id,
    lot,
    plannedG: g,
    massG: sure(g),
    source: lot ? id : null,
  });
  const batch = newRecord('batch', {
    name: 'Orchard, 20 L',
    madeOn: '2026-05-04',
    jurisdiction: 'EU',
    notes: '',
    uses: [],
    asked: {},
    formula: { id: 'f', name: 'Orchard', version: 1 },
    lines: [],
    reached: [],
    checks: [],
    weighed: [
      weighed('concentrate', 'linalool', 'Saltmarsh, lot L-1', 2),
      weighed('concentrate', 'maltol', 'Saltmarsh, lot M-2', 1),
      weighed('concentrate', 'linalool', 'Saltmarsh, lot L-1', 1),
      weighed('syrup', 'sugar', '', 2000),
      weighed('syrup', 'concentrate', '', 24),
      weighed('syrup', 'concentrate', '', 1), // more of it, after a weighing that went over
    ],
    drink: { litres: sure(20), brix: sure(10), abv: sure(0), densityGPerMl: sure(1.04), emulsion: false },
  });
  const lots = ['linalool', 'maltol'].map((id) =>
    newRecord('bottle', { id, material: id, supplier: 'Saltmarsh', lot: '', grade: 'fit for drinks' }),
  );
  takeIn([...lots, batch]);

  test('says its name, grade, day, litres, sugar, its own lot, how much concentrate is in a litre, and its short id', () => {
    expect(wordsOn(labelOf({ ...batch, code: 'B2' }, 'vial'))).toBe(
      'B2 | Orchard, 20 L | made 2026-05-04 | fit for drinks | 20 L | 10.0 °Brix | lot B2 | concentrate 1.25 g/L | ' +
        spacedShortId(shortIdOf(batch.id)),
    );
    expect(wordsOn(labelOf(batch, 'vial'))).not.toContain('lot'); // one of the first version has no code
    expect(labelOf(batch, 'vial').code?.side).toBeGreaterThan(0);
  });

  test('a scan of it opens the batch', () => {
    expect(meaningOf(codeTextOf(shortIdOf(batch.id)), (id) => id)).toBe(batch.id);
  });

  test('says its alcohol, and carries no flame with 40 % vol: a finished drink is food', () => {
    const drink = { ...batch.drink, abv: sure(40), brix: sure(0), densityGPerMl: sure(0.95) };
    const label = labelOf({ ...batch, drink }, 'vial');
    expect(wordsOn(label)).toContain('40.0 % vol | 20 L | concentrate');
    expect(label.content.flame).toBe(false);
  });
});

describe('the flame', () => {
  const vial = (solvent: string) => vialRecord({ code: 'V', name: 'v', solvent });

  test('is due for ethanol and isopropanol, not for propylene glycol, oil or water', () => {
    expect(['ethanol-96', 'ethanol-denatured', 'isopropanol-99'].map((id) => burns(vial(id)))).toEqual([
      true,
      true,
      true,
    ]);
    expect(['propylene-glycol', 'triacetin', 'mct', 'water'].map((id) => burns(vial(id)))).toEqual(
      Array(4).fill(false),
    );
  });

  test('is due for 10 % of spirit in water, which flashes at 49 °C, and not for 4 %: at 5 % it is 62 °C (engineering tables)', () => {
    const spirit = vial('ethanol-96');
    takeIn([spirit]);
    const thinned = (massG: number) => ({
      ...vial('water'),
      massG: { value: 10, sources: [] },
      uses: [{ id: spirit.id, massG }],
    });
    expect(burns(thinned(1.1))).toBe(true);
    expect(burns(thinned(0.4))).toBe(false);
  });

  test('is due for a material that flashes at 45 °C once there is more than a little of it', () => {
    const limonene = newRecord('material', {
      name: 'd-limonene',
      code: 'LIM',
      sort: 'substance' as const,
      form: 'liquid' as const,
      cautions: [],
      flash: { value: 45, source: 'IEC 60079-20-1' },
    });
    takeIn([limonene]);
    const of = (strength: number) => ({
      ...vial('mct'),
      contents: [{ material: limonene.id, name: 'd-limonene', strength: { value: strength, sources: [] } }],
    });
    expect([burns(of(0.01)), burns(of(0.2))]).toEqual([false, true]);
  });
});

describe('how labels are set up', () => {
  test('usually it is a 30 × 20 mm label on a 203 dpi label printer', () => {
    expect(jobOf(labelSetUp())).toEqual({ kind: 'vial', widthMm: 30, heightMm: 20, dpi: 203, sheet: null });
  });

  test('an own size out of reach is said beside its field, in one sentence', () => {
    expect(jobOf({ ...labelSetUp(), size: 'own', ownWidth: '8', ownHeight: 'x' })).toEqual({
      problems: {
        ownWidth: 'Wide: at least 15 mm, not 8 mm.',
        ownHeight: '“x” is not a number: type digits, with a comma or a point.',
      },
    });
  });

  test('a sheet of labels takes margins and gaps as typed, plain paper takes none', () => {
    const setUp = { ...labelSetUp(), on: 'A4', paper: 'labels', left: '7,5', first: '4' };
    expect(jobOf(setUp)).toMatchObject({
      sheet: { marginMm: { left: 7.5, top: 10 }, gapMm: { across: 2, down: 0 }, skip: 3 },
    });
    expect(jobOf({ ...setUp, paper: 'cut' })).toMatchObject({
      sheet: { marginMm: null, gapMm: { across: 0, down: 0 } },
    });
  });
});
