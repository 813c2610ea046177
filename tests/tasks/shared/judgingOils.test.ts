import { beforeAll, describe, expect, test } from 'vitest';
import type { Trait } from '../../../src/core/limits/figure';
import { exact } from '../../../src/core/number/measured';
import type { RunEvent } from '../../../src/records/kind/run';
import { takeIn } from '../../../src/records/shelf';
import { fold } from '../../../src/tasks/engine/fold';
import { judge, traitKey } from '../../../src/tasks/shared/judgeRun';
import { catalogue, factsOf, loadCatalogue } from '../../../src/workshop/catalogue';

const envelope = (id: string) => ({ id, kind: 'material', v: 1, made: '2026-01-01T08:00:00.000Z', from: [], code: id });

/** Oils as they come from the catalogue, and two of a person's own, known by the Latin name alone. */
const own = {
  sassafras: { name: 'sassafras oil', botanical: 'Sassafras albidum (Nutt.) Nees' },
  woodruff: { name: 'woodruff extract', botanical: 'Galium odoratum' },
  boldo: { name: 'boldo leaf extract', botanical: 'Peumus boldus Mol.' },
  germander: { name: 'germander', botanical: 'Teucrium chamaedrys' },
  centaury: { name: 'centaury', botanical: 'Centaurium erythraea' },
  'st-johns-wort': { name: "St John's wort", botanical: 'Hypericum perforatum' },
};
const ofCatalogue = 'pennyroyal brazilian-sassafras cassia wormwood nutmeg sage basil cinnamon-bark'.split(' ');

beforeAll(async () => {
  await loadCatalogue();
  const rows = catalogue.value!.rows;
  takeIn([
    ...ofCatalogue.map((name) => ({ ...envelope(name), ...factsOf(rows.get(`${name}-oil`)!) })),
    ...Object.entries(own).map(([id, facts]) => ({
      ...envelope(id),
      ...facts,
      sort: 'natural',
      form: 'liquid',
      cautions: [],
    })),
  ]);
});

type Asked = { id: string; rules: 'EU' | 'US'; abv: number; trait?: Trait | undefined; said?: 'yes' | 'no' };

/** 100 mg/kg of one material in a drink of density 1, judged as the screens do it. */
function answers({ id, rules, abv, trait, said = 'yes' }: Asked): string[] {
  const typed = { jurisdiction: rules, ...(trait ? { [traitKey(trait)]: said } : {}) };
  const run = fold(
    Object.entries(typed).map(([key, text], seq): RunEvent => ({ run: 'r', seq, at: '', type: 'typed', key, text })),
  );
  const { findings } = judge(run, [{ id, name: id, mgPerKg: exact(100) }], { abv, density: 1 })!;
  return findings
    .filter(({ check }) => check !== 'concern')
    .map(({ check, state, what, amount, max, figure, from }) => {
      const read = from.every(({ confirmed }) => confirmed) ? '' : ', content not read';
      const against = max === null ? '' : ` of ${max}`;
      return `${check} ${state}: ${what} ${Number(amount.value.toPrecision(4))}${against} (${figure!.level}${read})`;
    });
}

const mint: Trait = 'mint';
const artemisia: Trait = 'from Artemisia';
const PULEGONE = 'intake over: pulegone and menthofuran 0.48 of 0.1 (memory)';
const SASSAFRAS = 'intake look: safrole 0.45 (secondary, content not read)';
const COUMARIN = 'intake check: coumarin 0.02 of 0.1 (secondary, content not read)';
const WORMWOOD = 'intake over: thujone 18 of 3 (secondary, content not read)';
const SAGE = 'intake over: thujone 15.45 of 3 (secondary, content not read)';
const NUTMEG = [
  'intake look: methyleugenol 0.008 (secondary)',
  'intake look: safrole 0.014 (secondary)',
  'intake look: apiole, elemicin, myristicin 0.062 (primary)',
];
const BASIL = [
  'intake look: methyleugenol 0.025 (secondary, content not read)',
  'intake look: estragole 0.44 (secondary)',
];

describe('oils at 100 mg/kg are answered as the rows say, with how far each figure was confirmed', () => {
  test.each<[string, 'EU' | 'US', number, Trait | undefined, string[]]>([
    // pulegone at most 96 % of the oil: 96 mg/kg; 0.3 kg a day, 60 kg
    ['pennyroyal', 'EU', 0, mint, ['limit over: pulegone 96 of 20 (memory)', PULEGONE]],
    ['pennyroyal', 'EU', 20, mint, ['limit near: pulegone 96 of 100 (memory)', PULEGONE]],
    ['pennyroyal', 'US', 0, mint, [PULEGONE]],
    ['pennyroyal', 'US', 20, mint, [PULEGONE]],
    // safrole at most 90 %
    ...(['brazilian-sassafras', 'sassafras'] as const).flatMap(
      (id): [string, 'EU' | 'US', number, undefined, string[]][] => {
        const banned = `added prohibited: ${id} 100 of 0 (secondary)`;
        // The part of the own sassafras is not known: it may be the leaf, which has to be free of safrole.
        const free =
          'limit over: safrole from the camphor tree or from sassafras leaf 90 of 0 (primary, content not read)';
        const leaf = id === 'sassafras' ? [free] : [];
        return [
          [id, 'EU', 0, undefined, ['limit over: safrole 90 of 1 (proposal, content not read)', SASSAFRAS]],
          [id, 'EU', 20, undefined, [SASSAFRAS]],
          [id, 'US', 0, undefined, [banned, ...leaf, SASSAFRAS]],
          [id, 'US', 20, undefined, [banned, ...leaf, SASSAFRAS]],
        ];
      },
    ),
    // coumarin at most 4 %; no rule for drinks, an intake of 0.1 mg/kg body weight
    ['cassia', 'EU', 0, undefined, [COUMARIN]],
    ['cassia', 'EU', 20, undefined, [COUMARIN]],
    ['cassia', 'US', 0, undefined, [COUMARIN]],
    ['cassia', 'US', 20, undefined, [COUMARIN]],
    // thujone at most 60 %
    [
      'wormwood',
      'EU',
      0,
      artemisia,
      ['limit over: thujone (alpha and beta), from Artemisia 60 of 0.5 (secondary, content not read)', WORMWOOD],
    ],
    [
      'wormwood',
      'EU',
      20,
      artemisia,
      ['limit over: thujone (alpha and beta), from Artemisia 60 of 35 (secondary, content not read)', WORMWOOD],
    ],
    [
      'wormwood',
      'US',
      0,
      undefined,
      ['limit over: thujone from wormwood or tansy 60 of 0 (primary, content not read)', WORMWOOD],
    ],
    [
      'wormwood',
      'US',
      20,
      undefined,
      ['limit over: thujone from wormwood or tansy 60 of 0 (primary, content not read)', WORMWOOD],
    ],
    // safrole 2.8 %, methyleugenol 1.6 %, myristicin 12 % and elemicin 0.4 % at most
    [
      'nutmeg',
      'EU',
      0,
      undefined,
      ['limit over: methyleugenol 1.6 of 1 (proposal)', 'limit over: safrole 2.8 of 1 (proposal)', ...NUTMEG],
    ],
    ['nutmeg', 'EU', 20, undefined, NUTMEG],
    ['nutmeg', 'US', 0, undefined, NUTMEG],
    ['nutmeg', 'US', 20, undefined, NUTMEG],
    // alpha-thujone 43 % and beta-thujone 8.5 % at most, added
    ['sage', 'EU', 0, undefined, [SAGE]],
    [
      'sage',
      'EU',
      20,
      undefined,
      ['limit over: thujone (alpha and beta) 51.5 of 10 (secondary, content not read)', SAGE],
    ],
    ['sage', 'US', 0, undefined, [SAGE]],
    ['sage', 'US', 20, undefined, [SAGE]],
    // estragole 88 %, methyleugenol 5 % at most
    [
      'basil',
      'EU',
      0,
      undefined,
      [
        'limit over: estragole 88 of 10 (proposal)',
        'limit over: methyleugenol 5 of 1 (proposal, content not read)',
        ...BASIL,
      ],
    ],
    ['basil', 'EU', 20, undefined, BASIL],
    ['basil', 'US', 0, undefined, BASIL],
    ['basil', 'US', 20, undefined, BASIL],
  ])('%s oil, %s rules, %d %% ABV (%s)', (id, rules, abv, trait, expected) => {
    expect(answers({ id, rules, abv, trait }).sort()).toEqual([...expected].sort());
  });

  test('cinnamon bark is charged with its own 0.5 % of coumarin, not with the 4 % of cassia', () => {
    const said = answers({ id: 'cinnamon-bark', rules: 'EU', abv: 0 });
    expect(said).toContain('intake check: coumarin 0.0025 of 0.1 (secondary, content not read)');
  });

  test('a drink made from wormwood is judged by its own maximum, not by the general one as well', () => {
    const limits = (said: 'yes' | 'no') =>
      answers({ id: 'wormwood', rules: 'EU', abv: 20, trait: artemisia, said }).filter((one) =>
        one.startsWith('limit'),
      );
    expect(limits('yes')).toHaveLength(1);
    expect(limits('no')).toEqual(['limit over: thujone (alpha and beta) 60 of 10 (secondary, content not read)']);
  });

  test.each(['woodruff', 'boldo', 'germander', 'centaury', 'st-johns-wort'])(
    '%s is not allowed in an alcohol-free drink in the US, and is in an alcoholic one',
    (id) => {
      expect(answers({ id, rules: 'US', abv: 0 })[0]).toMatch(/^added prohibited/);
      expect(answers({ id, rules: 'US', abv: 20 })).toEqual([]);
    },
  );
});

describe('additives in alcoholic drinks under EU rules', () => {
  const said = (cas: string, mgPerKg: number, abv: number, trait?: Trait) => {
    const run = fold(
      trait ? [{ run: 'r', seq: 0, at: '', type: 'typed', key: traitKey(trait), text: 'yes' } satisfies RunEvent] : [],
    );
    const { findings } = judge(run, [{ id: cas, name: cas, cas, mgPerKg: exact(mgPerKg) }], { abv, density: 1 })!;
    return findings
      .filter(({ check }) => check === 'limit')
      .map(({ state, amount, max }) => `${state} ${Number(amount.value.toPrecision(4))} of ${max}`);
  };

  // mg/L as the acid, imide or P2O5: factors 0.7464 (potassium sorbate), 0.8475 (sodium benzoate), 0.8928 (sodium saccharin)
  test.each<[string, string, number, number, Trait | undefined, string[]]>([
    ['potassium sorbate', '24634-61-5', 900, 0, undefined, ['over 671.8 of 300']],
    ['potassium sorbate', '24634-61-5', 900, 8, undefined, ['over 671.8 of 200']],
    ['potassium sorbate', '24634-61-5', 100, 8, undefined, ['check 74.64 of 200']],
    ['potassium sorbate', '24634-61-5', 900, 20, undefined, ['check 671.8 of null']],
    ['sodium benzoate', '532-32-1', 400, 8, undefined, ['over 339 of 200']],
    ['sodium benzoate', '532-32-1', 400, 15, undefined, ['check 339 of null']],
    ['dimethyl dicarbonate', '4525-33-1', 300, 8, undefined, ['check 300 of null']],
    ['dimethyl dicarbonate', '4525-33-1', 300, 8, 'cider', ['over 300 of 250']],
    ['quillaia', '68990-67-0', 100, 40, undefined, ['check 100 of null']],
    ['phosphoric acid', '7664-38-2', 2000, 30, undefined, ['over 1448 of 1000']],
    ['sucralose', '56038-13-2', 280, 8, undefined, ['over 280 of 250']],
    ['sucralose', '56038-13-2', 280, 40, undefined, ['check 280 of null']],
    ['sodium saccharin', '128-44-9', 100, 8, undefined, ['over 89.28 of 80']],
    ['cyclamate, calcium', '139-06-0', 300, 8, undefined, ['over 271.2 of 250']],
    ['acesulfame K', '55589-62-3', 200, 8, undefined, ['check 200 of 350']],
    ['steviol glycosides', '58543-16-1', 200, 8, undefined, ['check 65.86 of null']],
    ['advantame', '714229-20-6', 3, 8, undefined, ['check 3 of null']],
    ['neotame', '165450-17-9', 30, 8, undefined, ['over 30 of 20']],
    ['propane-1,2-diol alginate', '9005-37-2', 200, 20, undefined, ['check 200 of null']],
  ])('%s (%s) at %d mg/kg and %d %% ABV (%s): %s', (_, cas, mgPerKg, abv, trait, expected) => {
    expect(said(cas, mgPerKg, abv, trait)).toEqual(expected);
  });
});
