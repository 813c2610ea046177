import type { BanRow, Level, LimitRow } from '../core/limits/figure';

/**
 * US rules for a flavoured drink. Most flavourings have no number there, only "the minimum quantity and good manufacturing
 * practice" (21 CFR 172.510, 172.515, 182.10, 182.20, 182.60). mg/kg of finished drink; 1 % is 10,000 mg/kg.
 * Sections were read in public copies of the Code; asOf is given where the copy shows one.
 */

const OFF_LIST = '21 CFR 172.515 as changed 2018, confirmation notice 2020-01060 as quoted; FDA Substances Added to Food';
const TTB = 'TTB list of flavouring substances subject to limitation';
const TTB_LABEL = 'TTB limited ingredients';
const QUININE = ['130-95-0', '130-89-2', '6119-47-7', '804-63-7', '6119-70-6'];
/** Quinine (324.42 g/mol) over the salt: hydrochloride 360.88 and its dihydrate 396.91, sulfate 746.92/2 and its dihydrate 782.95/2. */
const AS_BASE = { '130-89-2': 0.899, '6119-47-7': 0.8174, '804-63-7': 0.8687, '6119-70-6': 0.8287 };

type AlcoholOnly = readonly [what: string, plants: readonly string[], level: Level, more?: string, cas?: readonly string[]];

/** Plants of 21 CFR 172.510(b) that are admitted in alcoholic beverages only; synonyms in Latin are from memory. */
const alcoholOnly: readonly AlcoholOnly[] = [
  ['angola weed', ['Roccella fuciformis'], 'primary'],
  ['arnica flowers', ['Arnica montana', 'Arnica fulgens', 'Arnica sororia', 'Arnica cordifolia'], 'primary'],
  ['artichoke leaves', ['Cynara scolymus', 'Cynara cardunculus'], 'primary'],
  ['boldo leaves', ['Peumus boldus'], 'primary'],
  ['bryonia root', ['Bryonia alba', 'Bryonia dioica'], 'primary'],
  ['buckbean leaves', ['Menyanthes trifoliata'], 'primary'],
  ['calumba root', ['Jateorhiza palmata', 'Jatrorrhiza palmata'], 'primary'],
  ['centaury', ['Centaurium umbellatum', 'Centaurium erythraea', 'Centaurium minus'], 'primary'],
  ['chirata', ['Swertia chirata', 'Swertia chirayita'], 'primary'],
  ['cork oak', ['Quercus suber', 'Quercus occidentalis'], 'primary'],
  ['costmary', ['Chrysanthemum balsamita', 'Tanacetum balsamita'], 'primary'],
  ['dittany (fraxinella) roots', ['Dictamnus albus'], 'primary'],
  ['elder tree leaves', ['Sambucus nigra'], 'secondary', 'not more than 25 ppm prussic acid in the flavour'],
  ['elecampane rhizome and roots', ['Inula helenium'], 'memory'],
  ['greater galanga', ['Alpinia galanga'], 'memory'],
  ['stemless gentian', ['Gentiana acaulis'], 'memory'],
  ['germander, chamaedrys', ['Teucrium chamaedrys'], 'memory'],
  ['germander, golden', ['Teucrium polium'], 'memory'],
  ['Iceland moss', ['Cetraria islandica'], 'memory'],
  ['imperatoria', ['Peucedanum ostruthium', 'Imperatoria ostruthium'], 'memory'],
  ['iva', ['Achillea moschata'], 'memory'],
  ['lemon-verbena', ['Lippia citriodora', 'Aloysia citriodora', 'Aloysia citrodora', 'Aloysia triphylla'], 'memory'],
  ['linden leaves', ['Tilia'], 'memory'],
  ['maidenhair fern', ['Adiantum capillus-veneris'], 'memory'],
  ['mullein flowers', ['Verbascum'], 'memory'],
  ['myrtle leaves', ['Myrtus communis'], 'memory'],
  ['English oak wood', ['Quercus robur'], 'memory'],
  ['pansy', ['Viola tricolor'], 'memory'],
  ['peach leaves', ['Prunus persica'], 'memory', 'not more than 25 ppm prussic acid in the flavour'],
  ['white pine bark', ['Pinus strobus'], 'memory'],
  ['poplar buds', ['Populus balsamifera', 'Populus candicans', 'Populus nigra'], 'memory'],
  ['red saunders (red sandalwood)', ['Pterocarpus santalinus'], 'memory'],
  ['garden rhubarb root', ['Rheum rhaponticum'], 'memory'],
  ['roselle', ['Hibiscus sabdariffa'], 'memory'],
  ["St John's wort", ['Hypericum perforatum'], 'memory', 'only as hypericin-free alcohol distillate'],
  ['sandarac', ['Tetraclinis articulata', 'Callitris quadrivalvis'], 'primary', '', ['9000-57-1']],
  ['Virginia snakeroot', ['Aristolochia serpentaria'], 'primary'],
  ['simaruba bark', ['Simaruba amara', 'Simarouba amara'], 'primary'],
  ['tansy', ['Tanacetum vulgare', 'Chrysanthemum vulgare'], 'primary', 'finished drink thujone free', ['8016-87-3']],
  ['blessed thistle', ['Cnicus benedictus', 'Onicus benedictus', 'Centaurea benedicta'], 'primary'],
  ['veronica', ['Veronica officinalis'], 'memory'],
  ['European vervain', ['Verbena officinalis'], 'memory'],
  ['sweet woodruff', ['Asperula odorata', 'Galium odoratum'], 'memory'],
];

/** Parts of a plant that the section means, where other parts of it are common food. */
const onlyParts: Readonly<Record<string, readonly string[]>> = {
  'artichoke leaves': ['leaf'],
  'elder tree leaves': ['leaf'],
  'linden leaves': ['leaf'],
  'peach leaves': ['leaf'],
};

/** What to say wherever this list answers: it is not whole. */
export const ALCOHOL_ONLY_IN_PART =
  'Plants that US law admits in alcoholic drinks only (21 CFR 172.510(b)): of that list A to D and S to T were read, the rest is from memory. A plant that is not answered here may still be in it: check the law.';

/** What may not be added in the US. */
export const bansUs: readonly BanRow[] = [
  { jurisdiction: 'US', what: 'calamus, calamus oil, calamus extract', cas: ['8015-79-0'], plants: ['Acorus calamus'], rule: 'prohibited in food in any amount', source: '21 CFR 189.110', asOf: '', level: 'primary' },
  { jurisdiction: 'US', what: 'coumarin, tonka bean, tonka extract', cas: ['91-64-5', '8046-22-8'], plants: ['Dipteryx odorata', 'Coumarouna odorata'], rule: 'prohibited in food', source: '21 CFR 189.130', asOf: '', level: 'primary' },
  { jurisdiction: 'US', what: 'safrole, isosafrole, dihydrosafrole, oil of sassafras', cas: ['94-59-7', '120-58-1', '94-58-6', '8006-80-2', '68917-09-9'], plants: ['Sassafras', 'Ocotea pretiosa', 'Ocotea odorifera', 'Ocotea cymbarum'], parts: ['bark', 'root', 'wood'], rule: 'prohibited in food', source: '21 CFR 189.180, as listed', asOf: '2025', level: 'secondary', note: 'wording of the section from memory; Brazilian sassafras (Ocotea) is counted here because its oil is nearly all safrole; safrole-free extract and leaves are admitted (21 CFR 172.580, 172.510)' },
  { jurisdiction: 'US', what: 'cinnamyl anthranilate', cas: ['87-29-6'], rule: 'prohibited in food', source: '21 CFR 189.113, as listed', asOf: '2025', level: 'secondary' },
  { jurisdiction: 'US', what: 'brominated vegetable oil', cas: ['8016-94-2'], rule: 'authorisation revoked, effective 2 August 2024', source: '89 FR 55040', asOf: '2024', level: 'primary' },
  { jurisdiction: 'US', what: 'benzophenone', cas: ['119-61-9'], rule: 'taken off the list of added synthetic flavourings; natural occurrence in oils is not affected', source: OFF_LIST, asOf: '2025', level: 'secondary' },
  { jurisdiction: 'US', what: 'ethyl acrylate', cas: ['140-88-5'], rule: 'taken off the list of added synthetic flavourings; natural occurrence in oils is not affected', source: OFF_LIST, asOf: '2025', level: 'secondary' },
  { jurisdiction: 'US', what: 'methyleugenol', cas: ['93-15-2'], rule: 'taken off the list of added synthetic flavourings; natural occurrence in oils is not affected', source: OFF_LIST, asOf: '2025', level: 'secondary' },
  { jurisdiction: 'US', what: 'myrcene', cas: ['123-35-3'], rule: 'taken off the list of added synthetic flavourings; natural occurrence in oils is not affected', source: OFF_LIST, asOf: '2025', level: 'secondary' },
  { jurisdiction: 'US', what: 'pulegone', cas: ['89-82-7'], rule: 'taken off the list of added synthetic flavourings; natural occurrence in oils is not affected', source: OFF_LIST, asOf: '2025', level: 'secondary' },
  { jurisdiction: 'US', what: 'pyridine', cas: ['110-86-1'], rule: 'taken off the list of added synthetic flavourings; natural occurrence in oils is not affected', source: OFF_LIST, asOf: '2025', level: 'secondary' },
  ...alcoholOnly.map(
    ([what, plants, level, more, cas = []]): BanRow => ({
      jurisdiction: 'US',
      what,
      cas,
      plants,
      ...(onlyParts[what] ? { parts: onlyParts[what], partSaid: true as const } : {}),
      rule: ['in alcoholic beverages only', more].filter(Boolean).join('; '),
      unless: 'alcoholic',
      source: '21 CFR 172.510(b)',
      asOf: level === 'memory' ? '' : '2022',
      level,
    }),
  ),
];

/** Highest amounts and label triggers in the US. */
export const limitsUs: readonly LimitRow[] = [
  { jurisdiction: 'US', what: 'quinine, as the base', cas: QUININE, max: 83, unit: 'mg/kg', effect: 'limit', drink: 'any', where: 'carbonated', as: AS_BASE, outside: 'ask', source: '21 CFR 172.575', asOf: '2026', level: 'primary', note: 'only carbonated drinks are named; the label must say quinine' },
  { jurisdiction: 'US', what: 'caffeine', cas: ['58-08-2'], max: 200, unit: 'mg/kg', effect: 'limit', drink: 'any', where: 'cola', outside: 'ask', source: '21 CFR 182.1180', asOf: '', level: 'primary', note: '0.02 %; cola-type drinks are named' },
  { jurisdiction: 'US', what: 'glycerol ester of wood rosin', cas: ['8050-30-4', '8050-31-5'], max: 100, unit: 'mg/kg', effect: 'limit', drink: 'any', where: 'citrus oil', outside: 'ask', source: '21 CFR 172.735', asOf: '2024', level: 'primary', note: 'to adjust the density of citrus oils; ppm of finished drink' },
  { jurisdiction: 'US', what: 'sucrose acetate isobutyrate', cas: ['126-13-6'], max: 300, unit: 'mg/kg', effect: 'limit', drink: 'non-alcoholic', outside: 'ask', source: '21 CFR 172.833', asOf: '', level: 'primary', note: 'alcoholic drinks are not named' },
  { jurisdiction: 'US', what: 'gum arabic', cas: ['9000-01-5'], max: 20000, unit: 'mg/kg', effect: 'limit', drink: 'non-alcoholic', outside: 'silent', source: '21 CFR 184.1330', asOf: '', level: 'primary', note: '2.0 % as served' },
  { jurisdiction: 'US', what: 'gum arabic', cas: ['9000-01-5'], max: 200000, unit: 'mg/kg', effect: 'limit', drink: 'alcoholic', outside: 'silent', source: '21 CFR 172.780', asOf: '2024', level: 'primary', note: '20 %' },
  { jurisdiction: 'US', what: 'propylene glycol', cas: ['57-55-6'], max: 50000, unit: 'mg/kg', effect: 'limit', drink: 'alcoholic', outside: 'silent', source: '21 CFR 184.1666', asOf: '', level: 'primary', note: '5 %' },
  { jurisdiction: 'US', what: 'propylene glycol', cas: ['57-55-6'], max: 20000, unit: 'mg/kg', effect: 'limit', drink: 'non-alcoholic', outside: 'silent', source: '21 CFR 184.1666', asOf: '', level: 'memory', note: '2.0 %, "all other food"' },
  { jurisdiction: 'US', what: 'sodium benzoate', cas: ['532-32-1'], max: 1000, unit: 'mg/kg', effect: 'limit', drink: 'any', outside: 'silent', source: '21 CFR 184.1733', asOf: '', level: 'primary', note: '0.1 %' },
  { jurisdiction: 'US', what: 'benzoic acid', cas: ['65-85-0'], max: 1000, unit: 'mg/kg', effect: 'limit', drink: 'any', outside: 'silent', source: '21 CFR 184.1021', asOf: '', level: 'primary', note: '0.1 %' },
  { jurisdiction: 'US', what: 'liquorice, as glycyrrhizin', cas: ['1405-86-3'], max: 1500, unit: 'mg/kg', effect: 'limit', drink: 'non-alcoholic', outside: 'silent', source: '21 CFR 184.1408', asOf: '', level: 'primary', note: '0.15 %' },
  { jurisdiction: 'US', what: 'liquorice, as glycyrrhizin', cas: ['1405-86-3'], max: 1000, unit: 'mg/kg', effect: 'limit', drink: 'alcoholic', outside: 'silent', source: '21 CFR 184.1408', asOf: '', level: 'primary', note: '0.1 %' },
  { jurisdiction: 'US', what: 'dimethyl dicarbonate', cas: ['4525-33-1'], max: 250, unit: 'mg/kg', effect: 'limit', drink: 'any', outside: 'silent', source: '21 CFR 172.133', asOf: '', level: 'memory' },
  { jurisdiction: 'US', what: 'malic acid', cas: ['6915-15-7', '97-67-6'], max: 7000, unit: 'mg/kg', effect: 'limit', drink: 'alcoholic', outside: 'silent', source: TTB, asOf: '', level: 'secondary', note: '0.7 %; section number partly from memory' },
  { jurisdiction: 'US', what: 'acetic acid', cas: ['64-19-7'], max: 1500, unit: 'mg/kg', effect: 'limit', drink: 'alcoholic', outside: 'silent', source: TTB, asOf: '', level: 'secondary', note: '0.15 %; section number partly from memory' },
  { jurisdiction: 'US', what: 'caprylic acid', cas: ['124-07-2'], max: 10, unit: 'mg/kg', effect: 'limit', drink: 'alcoholic', outside: 'silent', source: TTB, asOf: '', level: 'secondary', note: '0.001 %; section number partly from memory' },
  { jurisdiction: 'US', what: 'ethyl formate', cas: ['109-94-4'], max: 100, unit: 'mg/kg', effect: 'limit', drink: 'alcoholic', outside: 'silent', source: TTB, asOf: '', level: 'secondary', note: '0.01 %; section number partly from memory' },
  { jurisdiction: 'US', what: 'hydrocyanic acid from cherry pits or cherry laurel', cas: ['74-90-8'], max: 25, unit: 'mg/kg', effect: 'limit', drink: 'alcoholic', outside: 'silent', source: TTB, asOf: '', level: 'secondary' },
  { jurisdiction: 'US', what: 'vanillin, synthetic', cas: ['121-33-5'], max: 40, unit: 'mg/kg', effect: 'label', drink: 'alcoholic', outside: 'silent', source: TTB_LABEL, asOf: '', level: 'primary', note: 'above it the drink is labelled imitation or artificially flavoured; not a safety limit' },
  { jurisdiction: 'US', what: 'ethyl vanillin', cas: ['121-32-4'], max: 16, unit: 'mg/kg', effect: 'label', drink: 'alcoholic', outside: 'silent', source: TTB_LABEL, asOf: '', level: 'primary', note: 'above it the drink is labelled imitation or artificially flavoured; not a safety limit' },
  { jurisdiction: 'US', what: 'maltol, synthetic', cas: ['118-71-8'], max: 250, unit: 'mg/kg', effect: 'label', drink: 'alcoholic', outside: 'silent', source: TTB_LABEL, asOf: '', level: 'primary', note: 'above it the drink is labelled imitation or artificially flavoured; not a safety limit' },
  { jurisdiction: 'US', what: 'ethyl maltol', cas: ['4940-11-8'], max: 100, unit: 'mg/kg', effect: 'label', drink: 'alcoholic', outside: 'silent', source: TTB_LABEL, asOf: '', level: 'primary', note: 'above it the drink is labelled imitation or artificially flavoured; not a safety limit' },
  { jurisdiction: 'US', what: 'thujone from wormwood or tansy', cas: ['546-80-5', '471-15-8'], via: ['8008-93-3', '8016-87-3'], viaPlants: ['Artemisia', 'Tanacetum vulgare', 'Chrysanthemum vulgare'], max: 0, unit: 'mg/kg', effect: 'limit', drink: 'any', outside: 'silent', source: '21 CFR 172.510(b)', asOf: '', level: 'primary', note: 'the section says the finished food is thujone free and gives no number' },
  { jurisdiction: 'US', what: 'thujone from white cedar', cas: ['546-80-5', '471-15-8'], via: ['8007-20-3'], viaPlants: ['Thuja occidentalis'], max: 0, unit: 'mg/kg', effect: 'limit', drink: 'any', outside: 'silent', source: '21 CFR 172.510(b), TTB list', asOf: '', level: 'secondary', note: 'the section says the finished food is thujone free and gives no number' },
  { jurisdiction: 'US', what: 'safrole from the camphor tree or from sassafras leaf', cas: ['94-59-7'], via: ['8008-51-3'], viaPlants: ['Cinnamomum camphora', 'Sassafras albidum'], max: 0, unit: 'mg/kg', effect: 'limit', drink: 'any', outside: 'silent', source: '21 CFR 172.510(b)', asOf: '2022', level: 'primary', note: 'the section says safrole free and gives no number' },
];
