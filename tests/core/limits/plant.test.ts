import { describe, expect, test } from 'vitest';
import { rowsAbout, speaksOf } from '../../../src/core/limits/plant';

const speaks = (plant: string, botanical: string) => speaksOf({ plants: [plant] }, { botanical });

describe('a plant in Latin', () => {
  test.each([
    ['Hypericum perforatum', 'hypericum perforatum L.'],
    ['Acorus calamus', 'Acorus calamus var. angustatus'],
    ['Mentha x piperita', 'Mentha piperita'],
    ['Mentha piperita', 'Mentha × piperita L.'],
    ['Citrus aurantium', 'Citrus aurantium subsp. bergamia'],
    ['Arnica', 'Arnica montana'],
    ['Artemisia', 'ARTEMISIA SPP.'],
  ])('%s is meant by %s', (plant, typed) => expect(speaks(plant, typed)).toBe(true));

  test.each([
    ['Cinnamomum cassia', 'Cinnamomum verum'],
    ['Cinnamomum verum', 'Cinnamomum cassia'],
    ['Mentha pulegium', 'Mentha spicata'],
    ['Arnica', 'Arnicastrum guerrerense'],
    ['Citrus aurantium subsp. bergamia', 'Citrus aurantium'],
    ['Salvia officinalis', 'Salvia rosmarinus'],
    ['Hypericum perforatum', ''],
  ])('%s is not meant by “%s”', (plant, typed) => expect(speaks(plant, typed)).toBe(false));

  test('a genus alone may be any of its species: the strict side', () => {
    expect(speaks('Aristolochia serpentaria', 'Aristolochia')).toBe(true);
    expect(speaks('Aristolochia serpentaria', 'Aristolochia spp.')).toBe(true);
    expect(speaks('Aristolochia serpentaria', 'Aristolochia L.')).toBe(true);
  });
});

describe('the part of a plant', () => {
  const bark = { plants: ['Cinnamomum verum'], parts: ['bark'] };
  const verum = { botanical: 'Cinnamomum verum' };
  test('counts where it is known, from what is stored before what is in the name', () => {
    expect(speaksOf(bark, { ...verum, part: 'bark' })).toBe(true);
    expect(speaksOf(bark, { ...verum, part: 'leaf', name: 'cinnamon bark oil' })).toBe(false);
    expect(speaksOf(bark, { ...verum, name: 'Cinnamon leaves oil' })).toBe(false);
    expect(speaksOf(bark, { ...verum, part: 'leaf, bark, twig' })).toBe(true);
  });

  test('that is not known may be any part, unless the other parts are common food', () => {
    expect(speaksOf(bark, { ...verum, name: 'cinnamon oil' })).toBe(true);
    const elder = { plants: ['Sambucus nigra'], parts: ['leaf'], partSaid: true } as const;
    expect(speaksOf(elder, { botanical: 'Sambucus nigra', name: 'elder extract' })).toBe(false);
    expect(speaksOf(elder, { botanical: 'Sambucus nigra', name: 'elderflower' })).toBe(false);
    expect(speaksOf(elder, { botanical: 'Sambucus nigra', name: 'elder leaf' })).toBe(true);
  });

  test('a row for one product asks for its name', () => {
    const terpenes = { plants: ['Illicium verum'], named: 'terpene' };
    expect(speaksOf(terpenes, { botanical: 'Illicium verum', name: 'star anise oil' })).toBe(false);
    expect(speaksOf(terpenes, { botanical: 'Illicium verum', name: 'Star anise Terpenes' })).toBe(true);
  });
});

describe('rows about a natural', () => {
  const rows = [
    { oil: ['1'], plants: ['Cinnamomum verum'], parts: ['bark'], of: 'bark' },
    { oil: ['1'], plants: ['Cinnamomum cassia'], of: 'cassia' },
    { oil: ['2'], plants: ['Mentha pulegium'], of: 'pennyroyal' },
    { oil: ['3'], plants: ['Mentha spicata'], of: 'spearmint' },
  ];
  const about = (natural: { cas?: string; botanical?: string; name?: string }) =>
    rowsAbout(rows, natural).map(({ of }) => of);

  test('are found by the number alone, by the plant alone, and not at all without either', () => {
    expect(about({ cas: '2' })).toEqual(['pennyroyal']);
    expect(about({ botanical: 'Mentha pulegium' })).toEqual(['pennyroyal']);
    expect(about({})).toEqual([]);
    expect(about({ cas: '' })).toEqual([]);
  });

  test('of a number that two plants share, the plant says which; without it both count', () => {
    expect(about({ cas: '1', botanical: 'Cinnamomum cassia' })).toEqual(['cassia']);
    expect(about({ cas: '1', botanical: 'Cinnamomum verum' })).toEqual(['bark']);
    expect(about({ cas: '1' })).toEqual(['bark', 'cassia']);
  });

  test('a number and a plant that contradict each other both count', () => {
    expect(about({ cas: '2', botanical: 'Mentha spicata' })).toEqual(['pennyroyal', 'spearmint']);
    expect(about({ cas: '2', botanical: 'mint, as the label says' })).toEqual(['pennyroyal']);
  });
});
