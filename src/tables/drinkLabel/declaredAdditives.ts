import type { Grams } from '../../core/nutrition/energy';
import { sweeteners } from '../keeping/sweeteners';

/** How an additive is declared, and what a gram of it as it is weighed holds. */
export interface DeclaredAdditive {
  /** The id it is weighed under, or its CAS number where it is a material of one's own. */
  readonly id: string;
  /** Category of the list of ingredients, EU. */
  readonly category: string;
  readonly name: string;
  readonly eNumber: string;
  /** Common name, and its function where the US wants one said. */
  readonly us: string;
  readonly holds?: Grams;
  /** g of sodium in a gram of it. */
  readonly sodium?: number;
  readonly source: string;
}

const LIST = 'E number: Reg. (EC) 1333/2008 Annex II; category: Reg. (EU) 1169/2011 Annex VII part C; both from memory, check';
const US = 'US: common or usual name, 21 CFR 101.4; preservatives with their function, 101.22(j); from memory, check';
const BOTH = `${LIST}. ${US}`;
const WEIGHTS = 'sodium: IUPAC atomic weights';
const FIBRE = 'counted as nothing but fibre, our choice';
const acid = (grams: number): Grams => ({ 'organic acid': grams });
const polyol: Grams = { polyol: 1 };

/** Additives of a drink; phosphoric acid is no organic acid. What is left of an acid in its salt is not counted for energy: our choice, under 1 kcal in 100 mL. */
export const declaredAdditives: readonly DeclaredAdditive[] = [
  { id: 'citric-acid', category: 'acid', name: 'citric acid', eNumber: 'E 330', us: 'citric acid', holds: acid(1), source: BOTH },
  { id: 'citric-acid-monohydrate', category: 'acid', name: 'citric acid', eNumber: 'E 330', us: 'citric acid', holds: acid(192.124 / 210.139), source: BOTH },
  { id: 'malic-acid', category: 'acid', name: 'malic acid', eNumber: 'E 296', us: 'malic acid', holds: acid(1), source: BOTH },
  { id: 'tartaric-acid', category: 'acid', name: 'tartaric acid', eNumber: 'E 334', us: 'tartaric acid', holds: acid(1), source: BOTH },
  { id: 'lactic-acid', category: 'acid', name: 'lactic acid', eNumber: 'E 270', us: 'lactic acid', holds: acid(0.8), source: BOTH },
  { id: 'phosphoric-acid', category: 'acid', name: 'phosphoric acid', eNumber: 'E 338', us: 'phosphoric acid', source: BOTH },
  { id: 'acetic-acid', category: 'acid', name: 'acetic acid', eNumber: 'E 260', us: 'acetic acid', holds: acid(1), source: BOTH },
  { id: 'ascorbic-acid', category: 'antioxidant', name: 'ascorbic acid', eNumber: 'E 300', us: 'ascorbic acid (preservative)', holds: acid(1), source: BOTH },
  { id: 'trisodium-citrate', category: 'acidity regulator', name: 'sodium citrates', eNumber: 'E 331', us: 'sodium citrate', sodium: (3 * 22.99) / 294.1, source: `${BOTH}; ${WEIGHTS}` },
  { id: 'tripotassium-citrate', category: 'acidity regulator', name: 'potassium citrates', eNumber: 'E 332', us: 'potassium citrate', source: BOTH },
  { id: 'sodium-hydrogen-carbonate', category: 'acidity regulator', name: 'sodium carbonates', eNumber: 'E 500', us: 'sodium bicarbonate', sodium: 22.99 / 84.007, source: `${BOTH}; ${WEIGHTS}` },
  { id: 'sodium-benzoate', category: 'preservative', name: 'sodium benzoate', eNumber: 'E 211', us: 'sodium benzoate (preservative)', sodium: 22.99 / 144.1, source: `${BOTH}; ${WEIGHTS}` },
  { id: 'potassium-sorbate', category: 'preservative', name: 'potassium sorbate', eNumber: 'E 202', us: 'potassium sorbate (preservative)', source: BOTH },
  { id: 'gum-arabic', category: 'emulsifier', name: 'gum arabic', eNumber: 'E 414', us: 'gum arabic', holds: { fibre: 1 }, source: `${BOTH}; ${FIBRE}` },
  { id: 'modified-starch', category: 'emulsifier', name: 'starch sodium octenyl succinate', eNumber: 'E 1450', us: 'food starch-modified', holds: { carbohydrate: 1 }, source: BOTH },
  { id: 'quillaia', category: 'emulsifier', name: 'quillaia extract', eNumber: 'E 999', us: 'quillaia extract', source: BOTH },
  { id: 'agent-126-13-6', category: 'stabiliser', name: 'sucrose acetate isobutyrate', eNumber: 'E 444', us: 'sucrose acetate isobutyrate', source: BOTH },
  { id: 'agent-8050-30-4', category: 'stabiliser', name: 'glycerol esters of wood rosins', eNumber: 'E 445', us: 'glycerol ester of wood rosin', source: BOTH },
  { id: 'agent-9000-16-2', category: 'stabiliser', name: 'damar gum', eNumber: '(no E number known)', us: 'damar gum', source: 'no E number from memory: check that it may be used at all' },
  { id: '149-32-6', category: 'sweetener', name: 'erythritol', eNumber: 'E 968', us: 'erythritol', holds: { erythritol: 1 }, source: BOTH },
  { id: '87-99-0', category: 'sweetener', name: 'xylitol', eNumber: 'E 967', us: 'xylitol', holds: polyol, source: BOTH },
  { id: '50-70-4', category: 'sweetener', name: 'sorbitols', eNumber: 'E 420', us: 'sorbitol', holds: polyol, source: BOTH },
  { id: '585-88-6', category: 'sweetener', name: 'maltitols', eNumber: 'E 965', us: 'maltitol', holds: polyol, source: BOTH },
  { id: '64519-82-0', category: 'sweetener', name: 'isomalt', eNumber: 'E 953', us: 'isomalt', holds: polyol, source: BOTH },
  { id: '69-65-8', category: 'sweetener', name: 'mannitols', eNumber: 'E 421', us: 'mannitol', holds: polyol, source: BOTH },
  ...sweeteners.map(({ id, name, eNumber }) => ({ id, category: 'sweetener', name: name.replace(/, as .*/, ''), eNumber, us: name.replace(/, as .*/, ''), source: BOTH, ...sodiumOf(id) })),
];

function sodiumOf(id: string): { sodium?: number } {
  const grams = { 'sodium-cyclamate': 22.99 / 201.22, 'sodium-saccharin': 22.99 / 205.17 }[id];
  return grams === undefined ? {} : { sodium: grams };
}

/** Carriers of a flavouring, which are no part of the list of ingredients, and what counts of them for energy, per gram. */
export const carriersHold: Readonly<Record<string, Grams>> = {
  glycerol: polyol, // three hydroxyl groups: Reg. (EU) 1169/2011 Annex I
  mct: { fat: 1 },
};
