import { describe, expect, test } from 'vitest';
import { rowsAbout, speaksOf } from '../../src/core/limits/plant';
import { oils } from '../../src/tables/catalogue/oils';
import { substances } from '../../src/tables/catalogue/substances';
import type { CatalogueRow } from '../../src/tables/catalogue/row';
import { constituents } from '../../src/tables/constituents';
import { bansUs } from '../../src/tables/limitsUs';

const naturals: readonly CatalogueRow[] = [...oils, ...substances].filter(({ botanical }) => botanical);
const found = (row: CatalogueRow) => rowsAbout(constituents, { ...row, cas: row.cas?.[0] });
const plain = (text: string) =>
  text
    .toLowerCase()
    .replace(/[^a-z ]/g, ' ')
    .replace(/ +/g, ' ');

/** What a person calls the plant: the first words of the name of an oil, up to "oil" or the first comma. */
const called = (name: string) => plain(name.split(/,| oil|\(/)[0]!).trim();

describe('naturals of the catalogue', () => {
  test('each that the table of constituents names by its plant is counted, without any CAS number', () => {
    const named = naturals.filter(({ botanical }) =>
      constituents.some(({ plants }) => plants?.some((plant) => plain(botanical!).startsWith(plain(plant)))),
    );
    expect(named.length).toBeGreaterThan(40);
    const silent = named.filter((row) => rowsAbout(constituents, { ...row, cas: undefined }).length === 0);
    // Leaf and flower oils of citrus trees: the table speaks of what is pressed from their peel.
    expect(silent.map(({ id }) => id).sort()).toEqual([
      'neroli-oil',
      'petitgrain-oil-bergamot',
      'petitgrain-oil-bitter-orange',
      'petitgrain-oil-paraguay',
    ]);
  });

  test('each that the table of constituents names in plain words is counted', () => {
    const words = constituents.map(({ material }) => plain(material));
    const named = naturals.filter(({ name }) => words.some((material) => material.startsWith(called(name))));
    expect(named.length).toBeGreaterThan(30);
    const silent = named.filter((row) => found(row).length === 0).map(({ name }) => name);
    // Petitgrain of other plants: the table speaks of that of the lemon tree.
    expect(silent).toEqual(['petitgrain oil, Paraguay', 'petitgrain oil, bitter orange', 'petitgrain oil, bergamot']);
  });

  test('pennyroyal, Brazilian sassafras, cassia, mace, pimento leaf and lime bring what the table says', () => {
    const brings = (id: string) => [...new Set(found(naturals.find((row) => row.id === id)!).map(({ name }) => name))];
    expect(brings('pennyroyal-oil')).toEqual(['pulegone']);
    expect(brings('brazilian-sassafras-oil')).toEqual(['safrole']);
    expect(brings('cassia-oil')).toEqual(['coumarin']);
    expect(brings('mace-oil')).toEqual(['safrole', 'methyleugenol', 'myristicin']);
    expect(brings('pimento-leaf-oil')).toEqual(['methyleugenol']);
    for (const id of ['lime-oil-expressed-a', 'lime-oil-expressed-b', 'lime-oil-persian'])
      expect(brings(id)).toEqual(['citral', 'bergapten']);
  });

  test('cinnamon bark, cinnamon leaf and cassia are told apart, whichever of their shared numbers is typed', () => {
    for (const cas of ['8015-91-6', '8007-80-5', '8015-96-1', undefined]) {
      const names = (botanical: string, part: string) =>
        new Set(rowsAbout(constituents, { botanical, part, cas }).map(({ material }) => material));
      expect(names('Cinnamomum verum', 'bark')).toEqual(
        new Set([
          'Cinnamon bark oil (C. verum)',
          'Cinnamon bark oil (Ph. Eur.)',
          ...(cas === '8015-96-1' ? ['Cinnamon leaf oil'] : []), // the number contradicts the part: both count
        ]),
      );
      const cassia = [...names('Cinnamomum cassia', 'bark')];
      expect(cassia).toContain('Cassia oil');
      if (cas === '8007-80-5' || cas === undefined) expect(cassia.join()).not.toContain('Cinnamon bark');
    }
  });
});

describe('an own material', () => {
  test('reaches every row of the table by its Latin name alone', () => {
    for (const row of constituents) {
      const [botanical] = row.plants!;
      const part = row.parts?.[0];
      const own = { botanical, part, name: row.material };
      expect(rowsAbout(constituents, own), row.material).toContain(row);
    }
  });

  test('reaches every ban of a plant by its Latin name, and sassafras by either genus', () => {
    for (const ban of bansUs.filter(({ plants }) => plants))
      for (const botanical of ban.plants!) expect(speaksOf(ban, { botanical, part: ban.parts?.[0] })).toBe(true);
    const sassafras = bansUs.find(({ what }) => what.includes('sassafras'))!;
    expect(speaksOf(sassafras, { botanical: 'Ocotea pretiosa (Nees) Mez', name: 'sassafras oil' })).toBe(true);
    expect(speaksOf(sassafras, { botanical: 'Sassafras albidum', name: 'sassafras leaf, safrole free' })).toBe(false);
  });
});
