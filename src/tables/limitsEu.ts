import type { BanRow, LimitRow } from '../core/limits/figure';
import { acidShares } from './acidShares';

/**
 * EU rules for a flavoured drink. Not the consolidated text: a row that is not primary or secondary says "check the law".
 * mg/kg and mg/L of drink as consumed. CAS numbers of Annex III substances were not printed in the text (not verified).
 */

const ANNEX_III = 'Reg. (EC) 1334/2008 Annex III, as adopted (OJ L 354, 31.12.2008)';
const QUOTED = 'Reg. (EC) 1334/2008 Annex III B, as quoted by an encyclopaedia';
/** Read in two national transpositions of the directive that Reg. (EC) 1333/2008 replaced in 2013; they agree. */
const OLD = 'Dir. 95/2/EC as transposed (NL, DE); same number believed carried over into Reg. (EC) 1333/2008';
/** Read in the French transposition: the kinds of drink that the directive names beside soft drinks. */
const OLD_FR = 'Dir. 95/2/EC as transposed (FR, arrêté of 2 October 1997); believed carried over into Reg. (EC) 1333/2008 cat. 14.2';
/** Read in the last text of the German transposition. */
const OLD_SWEET = 'Dir. 94/35/EC as transposed (DE, ZZulV 1998, text of 2012); believed carried over into Reg. (EC) 1333/2008';
const LABEL = 'Reg. (EU) 1169/2011 Annex III, as quoted by authorities';

const THUJONE = ['546-80-5', '471-15-8'];
const QUININE = ['130-95-0', '130-89-2', '6119-47-7', '804-63-7', '6119-70-6'];
/** Quinine (324.42 g/mol) over the salt: hydrochloride 360.88 and its dihydrate 396.91, sulfate 746.92/2 and its dihydrate 782.95/2. */
const AS_BASE = { '130-89-2': 0.899, '6119-47-7': 0.8174, '804-63-7': 0.8687, '6119-70-6': 0.8287 };
const BENZOATES = ['65-85-0', '532-32-1', '582-25-2'];
const SORBATES = ['110-44-1', '24634-61-5'];
/** Sulfur dioxide, and sodium sulfite, hydrogen sulfite and disulfite, potassium disulfite and hydrogen sulfite (E 220–224, E 228). CAS numbers from memory. */
const SULFITES = ['7446-09-5', '7757-83-7', '7631-90-5', '7681-57-4', '16731-55-8', '7773-03-7'];
/** Sulfur dioxide 64.064 g/mol over the salt: 126.04, 104.06, 190.10/2, 222.31/2, 120.16. */
const AS_DIOXIDE = { '7757-83-7': 0.5083, '7631-90-5': 0.6156, '7681-57-4': 0.674, '16731-55-8': 0.5763, '7773-03-7': 0.5332 };
const CYCLAMATES = ['100-88-9', '139-05-9', '139-06-0'];
/** Cyclamic acid 179.24 g/mol over its sodium salt 201.22 and its calcium salt 396.54/2. CAS numbers from memory. */
const AS_CYCLAMIC = { '139-05-9': 0.8908, '139-06-0': 0.904 };
const SACCHARINS = ['81-07-2', '128-44-9', '6485-34-3'];
/** Saccharin 183.18 g/mol over its sodium salt 205.17 and its calcium salt 404.43/2. CAS numbers from memory. */
const AS_IMIDE = { '128-44-9': 0.8928, '6485-34-3': 0.9059 };
/** Stevioside and rebaudioside A; steviol 318.45 g/mol over 804.87 and 967.01. CAS numbers from memory. */
const STEVIOL = ['57817-89-7', '58543-16-1'];
const AS_STEVIOL = { '57817-89-7': 0.3957, '58543-16-1': 0.3293 };
const ESTER_GUM = ['8050-30-4', '8050-31-5'];

/** What may not be added in the EU. A natural constituent of an oil does not count here but in the limits. */
export const bansEu: readonly BanRow[] = [
  { jurisdiction: 'EU', what: 'agaric acid', cas: ['666-99-9'], rule: 'not to be added as such', source: ANNEX_III, asOf: '2008', level: 'primary' },
  { jurisdiction: 'EU', what: 'aloin', cas: ['1415-73-2'], rule: 'not to be added as such', source: ANNEX_III, asOf: '2008', level: 'primary' },
  { jurisdiction: 'EU', what: 'capsaicin', cas: ['404-86-4'], rule: 'not to be added as such', source: ANNEX_III, asOf: '2008', level: 'primary' },
  { jurisdiction: 'EU', what: 'coumarin', cas: ['91-64-5'], rule: 'not to be added as such', source: ANNEX_III, asOf: '2008', level: 'primary' },
  { jurisdiction: 'EU', what: 'hypericine', cas: ['548-04-9'], rule: 'not to be added as such', source: ANNEX_III, asOf: '2008', level: 'primary' },
  { jurisdiction: 'EU', what: 'beta-asarone', cas: ['5273-86-9'], rule: 'not to be added as such', source: ANNEX_III, asOf: '2008', level: 'primary' },
  { jurisdiction: 'EU', what: 'estragole', cas: ['140-67-0'], rule: 'not to be added as such', source: ANNEX_III, asOf: '2008', level: 'primary' },
  { jurisdiction: 'EU', what: 'hydrocyanic acid', cas: ['74-90-8'], rule: 'not to be added as such', source: ANNEX_III, asOf: '2008', level: 'primary' },
  { jurisdiction: 'EU', what: 'menthofuran', cas: ['494-90-6'], rule: 'not to be added as such', source: ANNEX_III, asOf: '2008', level: 'primary' },
  { jurisdiction: 'EU', what: 'methyleugenol', cas: ['93-15-2'], rule: 'not to be added as such', source: ANNEX_III, asOf: '2008', level: 'primary' },
  { jurisdiction: 'EU', what: 'pulegone', cas: ['89-82-7'], rule: 'not to be added as such', source: ANNEX_III, asOf: '2008', level: 'primary' },
  { jurisdiction: 'EU', what: 'quassin', cas: ['76-78-8'], rule: 'not to be added as such', source: ANNEX_III, asOf: '2008', level: 'primary' },
  { jurisdiction: 'EU', what: 'safrole', cas: ['94-59-7'], rule: 'not to be added as such', source: ANNEX_III, asOf: '2008', level: 'primary' },
  { jurisdiction: 'EU', what: 'teucrin A', cas: ['12798-51-5'], rule: 'not to be added as such', source: ANNEX_III, asOf: '2008', level: 'primary' },
  { jurisdiction: 'EU', what: 'thujone (alpha and beta)', cas: ['546-80-5', '471-15-8'], rule: 'not to be added as such', source: ANNEX_III, asOf: '2008', level: 'primary' },
  { jurisdiction: 'EU', what: 'calamus, tetraploid form', cas: [], plants: ['Acorus calamus'], rule: 'not to be used for flavourings; the diploid form is not named', source: 'Reg. (EC) 1334/2008 Annex IV', asOf: '2008', level: 'primary' },
  { jurisdiction: 'EU', what: 'larch agaric', cas: [], plants: ['Laricifomes officinalis', 'Fomitopsis officinalis', 'Polyporus officinalis'], rule: 'flavourings made from it only for alcoholic drinks', unless: 'alcoholic', source: 'Reg. (EC) 1334/2008 Annex IV', asOf: '2008', level: 'primary' },
  { jurisdiction: 'EU', what: "St John's wort", cas: [], plants: ['Hypericum perforatum'], rule: 'flavourings made from it only for alcoholic drinks', unless: 'alcoholic', source: 'Reg. (EC) 1334/2008 Annex IV', asOf: '2008', level: 'primary' },
  { jurisdiction: 'EU', what: 'wall germander', cas: [], plants: ['Teucrium chamaedrys'], rule: 'flavourings made from it only for alcoholic drinks', unless: 'alcoholic', source: 'Reg. (EC) 1334/2008 Annex IV', asOf: '2008', level: 'primary' },
];

/** Highest amounts and label duties in the EU. */
export const limitsEu: readonly LimitRow[] = [
  { jurisdiction: 'EU', what: 'beta-asarone', cas: ['5273-86-9'], max: 1, unit: 'mg/kg', effect: 'limit', drink: 'alcoholic', outside: 'silent', source: ANNEX_III, asOf: '2008', level: 'primary' },
  { jurisdiction: 'EU', what: 'estragole', cas: ['140-67-0'], max: 10, unit: 'mg/kg', effect: 'limit', drink: 'non-alcoholic', outside: 'silent', source: 'proposal COM(2006) 427 and COM(2007) 671 for Reg. (EC) 1334/2008 Annex III B', asOf: '2007', level: 'proposal', note: 'does not count where only fresh, dried or frozen herbs and spices flavour the drink' },
  { jurisdiction: 'EU', what: 'hydrocyanic acid', cas: ['74-90-8'], max: 35, unit: 'mg/kg', effect: 'limit', drink: 'alcoholic', outside: 'silent', source: 'proposal COM(2006) 427 and COM(2007) 671 for Reg. (EC) 1334/2008 Annex III B', asOf: '2007', level: 'proposal' },
  { jurisdiction: 'EU', what: 'menthofuran', cas: ['494-90-6'], max: 200, unit: 'mg/kg', effect: 'limit', drink: 'alcoholic', where: 'mint', outside: 'silent', source: 'Reg. (EC) 1334/2008 Annex III B', asOf: '', level: 'memory' },
  { jurisdiction: 'EU', what: 'methyleugenol', cas: ['93-15-2'], max: 1, unit: 'mg/kg', effect: 'limit', drink: 'non-alcoholic', outside: 'silent', source: 'proposal COM(2006) 427 and COM(2007) 671 for Reg. (EC) 1334/2008 Annex III B', asOf: '2007', level: 'proposal', note: 'does not count where only fresh, dried or frozen herbs and spices flavour the drink' },
  { jurisdiction: 'EU', what: 'pulegone', cas: ['89-82-7'], max: 20, unit: 'mg/kg', effect: 'limit', drink: 'non-alcoholic', where: 'mint', outside: 'silent', source: 'Reg. (EC) 1334/2008 Annex III B', asOf: '', level: 'memory' },
  { jurisdiction: 'EU', what: 'pulegone', cas: ['89-82-7'], max: 100, unit: 'mg/kg', effect: 'limit', drink: 'alcoholic', where: 'mint', outside: 'silent', source: 'Reg. (EC) 1334/2008 Annex III B', asOf: '', level: 'memory' },
  { jurisdiction: 'EU', what: 'quassin', cas: ['76-78-8'], max: 0.5, unit: 'mg/kg', effect: 'limit', drink: 'non-alcoholic', outside: 'silent', source: 'proposal COM(2006) 427 and COM(2007) 671 for Reg. (EC) 1334/2008 Annex III B', asOf: '2007', level: 'proposal' },
  { jurisdiction: 'EU', what: 'quassin', cas: ['76-78-8'], max: 1.5, unit: 'mg/kg', effect: 'limit', drink: 'alcoholic', outside: 'silent', source: 'proposal COM(2006) 427 and COM(2007) 671 for Reg. (EC) 1334/2008 Annex III B', asOf: '2007', level: 'proposal' },
  { jurisdiction: 'EU', what: 'safrole', cas: ['94-59-7'], max: 1, unit: 'mg/kg', effect: 'limit', drink: 'non-alcoholic', outside: 'silent', source: 'proposal COM(2006) 427 and COM(2007) 671 for Reg. (EC) 1334/2008 Annex III B', asOf: '2007', level: 'proposal', note: 'does not count where only fresh, dried or frozen herbs and spices flavour the drink' },
  { jurisdiction: 'EU', what: 'teucrin A', cas: ['12798-51-5'], max: 5, unit: 'mg/kg', effect: 'limit', drink: 'alcoholic', where: 'bitter', outside: 'silent', source: 'Reg. (EC) 1334/2008 Annex III B', asOf: '', level: 'memory', note: 'bitter spirit drinks and bitter liqueurs; other alcoholic drinks 2 mg/kg' },
  { jurisdiction: 'EU', what: 'teucrin A', cas: ['12798-51-5'], max: 2, unit: 'mg/kg', effect: 'limit', drink: 'alcoholic', whereNot: 'bitter', outside: 'silent', source: 'proposal COM(2006) 427 and COM(2007) 671 for Reg. (EC) 1334/2008 Annex III B', asOf: '2007', level: 'proposal', note: 'alcoholic drinks that are not bitter' },
  { jurisdiction: 'EU', what: 'thujone (alpha and beta)', cas: THUJONE, max: 10, unit: 'mg/kg', effect: 'limit', drink: 'alcoholic', whereNot: 'from Artemisia', outside: 'silent', source: QUOTED, asOf: '2008', level: 'secondary', note: '35 mg/kg where the drink is made from Artemisia' },
  { jurisdiction: 'EU', what: 'thujone (alpha and beta), from Artemisia', cas: THUJONE, max: 35, unit: 'mg/kg', effect: 'limit', drink: 'alcoholic', where: 'from Artemisia', outside: 'silent', source: QUOTED, asOf: '2008', level: 'secondary' },
  { jurisdiction: 'EU', what: 'thujone (alpha and beta), from Artemisia', cas: THUJONE, max: 0.5, unit: 'mg/kg', effect: 'limit', drink: 'non-alcoholic', where: 'from Artemisia', outside: 'silent', source: QUOTED, asOf: '2008', level: 'secondary' },
  { jurisdiction: 'EU', what: 'caffeine as a flavouring', cas: ['58-08-2'], max: 150, unit: 'mg/kg', effect: 'limit', drink: 'non-alcoholic', outside: 'ask', source: 'Reg. (EU) 2018/1482, as quoted', asOf: '2018', level: 'secondary' },
  { jurisdiction: 'EU', what: 'theobromine as a flavouring', cas: ['83-67-0'], max: 100, unit: 'mg/kg', effect: 'limit', drink: 'non-alcoholic', outside: 'ask', source: 'Reg. (EU) 2018/1482, as quoted', asOf: '2018', level: 'secondary' },
  { jurisdiction: 'EU', what: 'quinine, as the base', cas: QUININE, max: 100, unit: 'mg/kg', effect: 'limit', drink: 'non-alcoholic', as: AS_BASE, outside: 'silent', source: 'Reg. (EC) 1334/2008 Annex I', asOf: '', level: 'memory', note: 'older national rules that were read: 85 mg/L; must be named on the label' },
  { jurisdiction: 'EU', what: 'quinine, as the base', cas: QUININE, max: 250, unit: 'mg/kg', effect: 'limit', drink: 'alcoholic', as: AS_BASE, outside: 'silent', source: 'Reg. (EC) 1334/2008 Annex I', asOf: '', level: 'memory', note: 'older national rules that were read: 300 mg/L; must be named on the label' },
  { jurisdiction: 'EU', what: 'benzoates, as benzoic acid', cas: BENZOATES, max: 150, unit: 'mg/L', effect: 'limit', drink: 'non-alcoholic', outside: 'ask', source: OLD, asOf: '2012', level: 'replaced', note: 'flavoured drinks without dairy; a survey of 2008 quotes the same number', as: acidShares },
  { jurisdiction: 'EU', what: 'benzoates, as benzoic acid', cas: BENZOATES, max: 200, unit: 'mg/L', effect: 'limit', drink: 'alcoholic', abvBelow: 15, outside: 'ask', source: OLD_FR, asOf: '1997', level: 'replaced', note: 'spirit drinks below 15 % vol; other alcoholic drinks are not named', as: acidShares },
  { jurisdiction: 'EU', what: 'sorbates, as sorbic acid', cas: SORBATES, max: 300, unit: 'mg/L', effect: 'limit', drink: 'non-alcoholic', outside: 'ask', source: OLD, asOf: '2012', level: 'replaced', note: 'flavoured drinks without dairy, sorbates alone', as: acidShares },
  { jurisdiction: 'EU', what: 'sorbates, as sorbic acid', cas: SORBATES, max: 200, unit: 'mg/L', effect: 'limit', drink: 'alcoholic', abvBelow: 15, outside: 'ask', source: OLD_FR, asOf: '1997', level: 'replaced', note: 'spirit drinks below 15 % vol; also cider, fruit wine, drinks from wine; aromatised wine 200 in the UK copy of Reg. (EC) 1333/2008 of 2020', as: acidShares },
  { jurisdiction: 'EU', what: 'sorbates beside benzoates, as sorbic acid', cas: SORBATES, max: 250, unit: 'mg/L', effect: 'limit', drink: 'non-alcoholic', onlyWith: [BENZOATES], outside: 'silent', source: OLD, asOf: '2012', level: 'replaced', as: acidShares },
  { jurisdiction: 'EU', what: 'benzoates and sorbates together, as the acids', cas: [...BENZOATES, ...SORBATES], max: 400, unit: 'mg/L', effect: 'limit', drink: 'alcoholic', abvBelow: 15, onlyWith: [BENZOATES, SORBATES], outside: 'silent', source: OLD_FR, asOf: '1997', level: 'replaced', note: 'spirit drinks below 15 % vol', as: acidShares },
  { jurisdiction: 'EU', what: 'sulfites, as sulfur dioxide', cas: SULFITES, max: 20, unit: 'mg/L', effect: 'limit', drink: 'non-alcoholic', outside: 'ask', source: OLD_FR, asOf: '1997', level: 'replaced', note: 'from all sources; drinks with fruit juice only, and only what comes along with its concentrate; 50 with 235 g/L of glucose syrup', as: AS_DIOXIDE },
  { jurisdiction: 'EU', what: 'sulfites, as sulfur dioxide', cas: SULFITES, max: 200, unit: 'mg/L', effect: 'limit', drink: 'alcoholic', where: 'cider', outside: 'ask', source: OLD_FR, asOf: '1997', level: 'replaced', note: 'from all sources; cider and fruit wine; aromatised wine the same in the UK copy of Reg. (EC) 1333/2008 of 2020', as: AS_DIOXIDE },
  { jurisdiction: 'EU', what: 'dimethyl dicarbonate', cas: ['4525-33-1'], max: 250, unit: 'mg/L', effect: 'limit', drink: 'non-alcoholic', outside: 'ask', source: OLD, asOf: '2012', level: 'replaced', note: 'added amount; no residue may be found' },
  { jurisdiction: 'EU', what: 'dimethyl dicarbonate', cas: ['4525-33-1'], max: 250, unit: 'mg/L', effect: 'limit', drink: 'alcoholic', where: 'cider', outside: 'ask', source: OLD, asOf: '2012', level: 'replaced', note: 'cider, fruit wine and drinks from wine only; an additive database lists the same for cat. 14.2.8' },
  { jurisdiction: 'EU', what: 'sucrose acetate isobutyrate (E 444)', cas: ['126-13-6'], max: 300, unit: 'mg/L', effect: 'limit', drink: 'non-alcoholic', where: 'cloudy', outside: 'not allowed', source: OLD, asOf: '2012', level: 'replaced', note: 'cloudy drinks only' },
  { jurisdiction: 'EU', what: 'sucrose acetate isobutyrate (E 444)', cas: ['126-13-6'], max: 300, unit: 'mg/L', effect: 'limit', drink: 'alcoholic', where: 'cloudy', abvBelow: 15, outside: 'not allowed', source: OLD, asOf: '2012', level: 'replaced', note: 'cloudy spirit drinks below 15 % vol only' },
  { jurisdiction: 'EU', what: 'glycerol esters of wood rosin (E 445)', cas: ESTER_GUM, max: 100, unit: 'mg/L', effect: 'limit', drink: 'any', where: 'cloudy', outside: 'not allowed', source: 'Reg. (EC) 1333/2008 Annex II 14.1.4, 14.2.6, 14.2.8, as quoted; EFSA Journal 2010;8(7):1654', asOf: '2010', level: 'secondary', note: 'cloudy drinks only' },
  { jurisdiction: 'EU', what: 'quillaia extract (E 999), anhydrous', cas: ['68990-67-0'], max: 200, unit: 'mg/L', effect: 'limit', drink: 'non-alcoholic', outside: 'ask', source: OLD, asOf: '2012', level: 'replaced', note: 'since Reg. (EU) 2025/2084 the amounts are said as saponins' },
  { jurisdiction: 'EU', what: 'quillaia extract (E 999), anhydrous', cas: ['68990-67-0'], max: 200, unit: 'mg/L', effect: 'limit', drink: 'alcoholic', where: 'cider', outside: 'ask', source: OLD, asOf: '2012', level: 'replaced', note: 'since Reg. (EU) 2025/2084 the amounts are said as saponins' },
  { jurisdiction: 'EU', what: 'propane-1,2-diol, triethyl citrate, diacetin, triacetin together', cas: ['57-55-6', '77-93-0', '25395-31-7', '102-76-1'], max: 3000, unit: 'mg/kg', effect: 'limit', drink: 'any', outside: 'silent', source: OLD, asOf: '2012', level: 'replaced', note: 'from all sources, in the drink as consumed' },
  { jurisdiction: 'EU', what: 'propane-1,2-diol (E 1520)', cas: ['57-55-6'], max: 1000, unit: 'mg/L', effect: 'limit', drink: 'any', outside: 'silent', source: OLD, asOf: '2012', level: 'replaced', note: 'from all sources; cream liqueurs are excepted' },
  { jurisdiction: 'EU', what: 'benzyl alcohol (E 1519)', cas: ['100-51-6'], max: 100, unit: 'mg/L', effect: 'limit', drink: 'alcoholic', where: 'liqueur', outside: 'silent', source: OLD, asOf: '2012', level: 'replaced', note: 'liqueurs, aromatised wines and their cocktails, from all sources' },
  { jurisdiction: 'EU', what: 'beta-cyclodextrin (E 459)', cas: ['7585-39-9'], max: 500, unit: 'mg/L', effect: 'limit', drink: 'any', outside: 'ask', source: OLD, asOf: '2012', level: 'replaced', note: 'flavoured teas and instant drinks' },
  { jurisdiction: 'EU', what: 'gum arabic modified with octenyl succinic acid (E 423)', cas: ['455885-22-0'], max: 1000, unit: 'mg/L', effect: 'limit', drink: 'non-alcoholic', outside: 'ask', source: 'Reg. (EU) 817/2013', asOf: '', level: 'memory', note: 'energy drinks and drinks with fruit juice' },
  { jurisdiction: 'EU', what: 'dimethyl polysiloxane (E 900)', cas: ['9006-65-9'], max: 10, unit: 'mg/L', effect: 'limit', drink: 'non-alcoholic', outside: 'ask', source: OLD, asOf: '2012', level: 'replaced' },
  { jurisdiction: 'EU', what: 'propane-1,2-diol alginate (E 405)', cas: ['9005-37-2'], max: 300, unit: 'mg/L', effect: 'limit', drink: 'non-alcoholic', outside: 'ask', source: OLD, asOf: '2012', level: 'replaced' },
  { jurisdiction: 'EU', what: 'phosphates, as P2O5', cas: ['7664-38-2'], max: 700, unit: 'mg/L', effect: 'limit', drink: 'non-alcoholic', outside: 'ask', source: OLD, asOf: '2012', level: 'replaced', note: 'phosphoric acid counts 0.7242 (141.945 / (2 × 97.994))', as: { '7664-38-2': 0.7242 } },
  { jurisdiction: 'EU', what: 'phosphates, as P2O5', cas: ['7664-38-2'], max: 1000, unit: 'mg/L', effect: 'limit', drink: 'alcoholic', outside: 'ask', source: OLD_FR, asOf: '1997', level: 'replaced', note: 'alcoholic drinks except wine and beer; aromatised wine the same in the UK copy of Reg. (EC) 1333/2008 of 2020', as: { '7664-38-2': 0.7242 } },
  { jurisdiction: 'EU', what: 'acesulfame K', cas: ['55589-62-3'], max: 350, unit: 'mg/L', effect: 'limit', drink: 'non-alcoholic', where: 'no added sugar', outside: 'ask', source: OLD_SWEET, asOf: '2012', level: 'replaced' },
  { jurisdiction: 'EU', what: 'acesulfame K', cas: ['55589-62-3'], max: 350, unit: 'mg/L', effect: 'limit', drink: 'alcoholic', abvBelow: 15, outside: 'ask', source: OLD_SWEET, asOf: '2012', level: 'replaced', note: 'spirit drinks below 15 % vol, and drinks mixed with a soft drink' },
  { jurisdiction: 'EU', what: 'aspartame', cas: ['22839-47-0'], max: 600, unit: 'mg/L', effect: 'limit', drink: 'non-alcoholic', where: 'no added sugar', outside: 'ask', source: OLD_SWEET, asOf: '2012', level: 'replaced' },
  { jurisdiction: 'EU', what: 'aspartame', cas: ['22839-47-0'], max: 600, unit: 'mg/L', effect: 'limit', drink: 'alcoholic', abvBelow: 15, outside: 'ask', source: OLD_SWEET, asOf: '2012', level: 'replaced', note: 'spirit drinks below 15 % vol, and drinks mixed with a soft drink' },
  { jurisdiction: 'EU', what: 'cyclamates, as the acid', cas: CYCLAMATES, max: 250, unit: 'mg/L', effect: 'limit', drink: 'non-alcoholic', where: 'no added sugar', outside: 'ask', source: OLD_SWEET, asOf: '2012', level: 'replaced', as: AS_CYCLAMIC },
  { jurisdiction: 'EU', what: 'cyclamates, as the acid', cas: CYCLAMATES, max: 250, unit: 'mg/L', effect: 'limit', drink: 'alcoholic', abvBelow: 15, outside: 'ask', source: OLD_SWEET, asOf: '2012', level: 'replaced', note: 'only drinks mixed from beer, cider, spirits or wine with a soft drink', as: AS_CYCLAMIC },
  { jurisdiction: 'EU', what: 'saccharins, as the imide', cas: SACCHARINS, max: 80, unit: 'mg/L', effect: 'limit', drink: 'non-alcoholic', where: 'no added sugar', outside: 'ask', source: OLD_SWEET, asOf: '2012', level: 'replaced', as: AS_IMIDE },
  { jurisdiction: 'EU', what: 'saccharins, as the imide', cas: SACCHARINS, max: 80, unit: 'mg/L', effect: 'limit', drink: 'alcoholic', abvBelow: 15, outside: 'ask', source: OLD_SWEET, asOf: '2012', level: 'replaced', note: 'spirit drinks below 15 % vol, and drinks mixed with a soft drink', as: AS_IMIDE },
  { jurisdiction: 'EU', what: 'sucralose', cas: ['56038-13-2'], max: 300, unit: 'mg/L', effect: 'limit', drink: 'non-alcoholic', where: 'no added sugar', outside: 'ask', source: OLD_SWEET, asOf: '2012', level: 'replaced' },
  { jurisdiction: 'EU', what: 'sucralose', cas: ['56038-13-2'], max: 250, unit: 'mg/L', effect: 'limit', drink: 'alcoholic', abvBelow: 15, outside: 'ask', source: OLD_SWEET, asOf: '2012', level: 'replaced', note: 'spirit drinks below 15 % vol, and drinks mixed with a soft drink; cider 50' },
  { jurisdiction: 'EU', what: 'neohesperidin dihydrochalcone (E 959)', cas: ['20702-77-6'], max: 30, unit: 'mg/L', effect: 'limit', drink: 'non-alcoholic', where: 'no added sugar', outside: 'ask', source: OLD_SWEET, asOf: '2012', level: 'replaced' },
  { jurisdiction: 'EU', what: 'neohesperidin dihydrochalcone (E 959)', cas: ['20702-77-6'], max: 30, unit: 'mg/L', effect: 'limit', drink: 'alcoholic', abvBelow: 15, outside: 'ask', source: OLD_SWEET, asOf: '2012', level: 'replaced', note: 'spirit drinks below 15 % vol, and drinks mixed with a soft drink; cider 20' },
  { jurisdiction: 'EU', what: 'neotame (E 961)', cas: ['165450-17-9'], max: 20, unit: 'mg/L', effect: 'limit', drink: 'non-alcoholic', where: 'no added sugar', outside: 'ask', source: OLD_SWEET, asOf: '2012', level: 'replaced' },
  { jurisdiction: 'EU', what: 'neotame (E 961)', cas: ['165450-17-9'], max: 20, unit: 'mg/L', effect: 'limit', drink: 'alcoholic', abvBelow: 15, outside: 'ask', source: OLD_SWEET, asOf: '2012', level: 'replaced', note: 'spirit drinks below 15 % vol, and drinks mixed with a soft drink' },
  { jurisdiction: 'EU', what: 'steviol glycosides (E 960), as steviol', cas: STEVIOL, max: 80, unit: 'mg/L', effect: 'limit', drink: 'non-alcoholic', where: 'no added sugar', as: AS_STEVIOL, outside: 'ask', source: 'Reg. (EC) 1333/2008 Annex II 14.1.4', asOf: '', level: 'memory' },
  { jurisdiction: 'EU', what: 'advantame', cas: ['714229-20-6'], max: 6, unit: 'mg/L', effect: 'limit', drink: 'non-alcoholic', where: 'no added sugar', outside: 'ask', source: 'Reg. (EC) 1333/2008 Annex II 14.1.4', asOf: '', level: 'memory' },
  { jurisdiction: 'EU', what: 'isopropanol', cas: ['67-63-0'], max: 10, unit: 'mg/kg', effect: 'limit', drink: 'any', outside: 'silent', source: 'Dir. 2009/32/EC (UK SI 2013/266 Sch. 6)', asOf: '2013', level: 'primary', note: 'residue of extraction; not a carrier for a drink' },
  { jurisdiction: 'EU', what: 'methanol', cas: ['67-56-1'], max: 10, unit: 'mg/kg', effect: 'limit', drink: 'any', outside: 'silent', source: 'Dir. 2009/32/EC (UK SI 2013/266 Sch. 6)', asOf: '2013', level: 'primary', note: 'residue of extraction' },
  { jurisdiction: 'EU', what: 'liquorice: "contains liquorice"', cas: ['1405-86-3'], max: 10, unit: 'mg/L', effect: 'label', drink: 'any', outside: 'silent', source: LABEL, asOf: '2011', level: 'secondary', note: 'from 10 mg/L of glycyrrhizic acid' },
  { jurisdiction: 'EU', what: 'liquorice: warning about high blood pressure', cas: ['1405-86-3'], max: 50, unit: 'mg/L', effect: 'label', drink: 'non-alcoholic', outside: 'silent', source: LABEL, asOf: '2011', level: 'secondary', note: 'from 50 mg/L; in alcoholic drinks from 300 mg/L' },
  { jurisdiction: 'EU', what: 'liquorice: warning about high blood pressure', cas: ['1405-86-3'], max: 300, unit: 'mg/L', effect: 'label', drink: 'alcoholic', outside: 'silent', source: LABEL, asOf: '2011', level: 'secondary' },
  { jurisdiction: 'EU', what: 'caffeine: warning of high content', cas: ['58-08-2'], max: 150, unit: 'mg/L', effect: 'label', drink: 'non-alcoholic', outside: 'silent', source: LABEL, asOf: '2011', level: 'secondary' },
];
