/**
 * Liquids that never go into a drink, whatever is said of their bottle. Names are in small letters and digits alone, without
 * blanks, hyphens and accents: 'propan2ol' is propan-2-ol.
 *
 * Ethyl acetate is not among them: it is a flavouring substance and, by the law below, an extraction solvent for all uses. Nor are
 * 1-propanol, the butanols, isopropyl myristate, benzyl benzoate and triethyl citrate, which are flavouring substances or additives.
 */
export interface NeverFit {
  /** As it begins a sentence. */
  readonly name: string;
  readonly cas: readonly string[];
  /** Names that mean it wherever they are, but for other substances that end in them (geranyl acetone). */
  readonly anywhere: readonly string[];
  /** Names that mean it only where nothing else of substance is beside them (isopropyl 99 %, but not isopropyl acetate). */
  readonly alone: readonly string[];
  readonly source: string;
  /** True where the reason was read in its source. */
  readonly verified: boolean;
}

const SOLVENTS = 'SSI 2013/266, schedule 6 (Directive 2009/32/EC)';
const ours = `${SOLVENTS}: an extraction solvent that has to be taken out again; that it is never a carrier is our choice`;
const PRACTICE = 'common practice, no source';

/** The rows; in each the names that the trade writes on its bottles. */
export const neverFitRows: readonly NeverFit[] = [
  {
    name: 'Isopropanol',
    cas: ['67-63-0'],
    anywhere: [
      'isopropanol',
      'ipropanol',
      'secpropanol',
      'propan2ol',
      '2propanol',
      'propanol2',
      'isopropylalcohol',
      'isopropylicalcohol',
      'secpropylalcohol',
      'isopropylalkohol',
      'isopropanolo',
      'dimethylcarbinol',
      'rubbingalcohol',
    ],
    alone: ['isopropyl', 'ipa', 'iproh'],
    source: `${ours}; 10 mg/kg may be left in food`,
    verified: true,
  },
  {
    name: 'Methanol',
    cas: ['67-56-1'],
    anywhere: [
      'methanol',
      'methylalcohol',
      'methylalkohol',
      'metanol',
      'metanolo',
      'woodalcohol',
      'woodspirit',
      'woodspirits',
      'woodnaphtha',
      'methylhydrate',
    ],
    alone: ['meoh', 'carbinol'],
    source: `${ours}; poisonous`,
    verified: true,
  },
  {
    name: 'Acetone',
    cas: ['67-64-1'],
    anywhere: ['acetone', 'aceton', 'acetona', 'propanone', 'propan2one', '2propanone', 'dimethylketone'],
    alone: [],
    source: ours,
    verified: true,
  },
  {
    name: 'Denatured alcohol',
    cas: [],
    anywhere: [
      'denat',
      'denatured',
      'denaturated',
      'denaturiert',
      'denature',
      'denaturado',
      'denaturato',
      'denaturee',
      'denaturierter',
      'denaturiertes',
      'vergallt',
      'vergallter',
      'vergalltes',
      'brennspiritus',
      'methylated',
      'meths',
      'sda',
      'tsda',
      'sdalcohol',
      'industrialspirit',
      'industrialspirits',
      'industrialalcohol',
      'industrialethanol',
      'surgicalspirit',
      'fuelalcohol',
      'fuelethanol',
      'perfumersalcohol',
    ],
    alone: ['ims', 'ida', 'cda'],
    source: PRACTICE,
    verified: false,
  },
  {
    name: 'Hexane',
    cas: ['110-54-3'],
    anywhere: [],
    alone: ['hexane', 'nhexane', 'hexanes', 'petroleumether', 'mineralspirits', 'lighterfluid'],
    source: `${ours}; 1 mg/kg may be left in an oil`,
    verified: true,
  },
  {
    name: 'Ethylene glycol',
    cas: ['107-21-1'],
    anywhere: [],
    alone: ['ethyleneglycol', 'ethane12diol', '12ethanediol', 'monoethyleneglycol', 'antifreeze'],
    source: `${PRACTICE}; poisonous`,
    verified: false,
  },
  {
    name: 'Diethylene glycol',
    cas: ['111-46-6'],
    anywhere: ['diethyleneglycol'],
    alone: ['deg'],
    source: `${PRACTICE}; poisonous`,
    verified: false,
  },
  {
    name: 'Dipropylene glycol',
    cas: ['25265-71-8', '110-98-5'],
    anywhere: ['dipropyleneglycol'],
    alone: ['dpg'],
    source: `${PRACTICE}: a carrier of perfumery`,
    verified: false,
  },
  {
    name: 'Diethyl phthalate',
    cas: ['84-66-2'],
    anywhere: ['diethylphthalate', 'ethylphthalate'],
    alone: ['dep'],
    source: `${PRACTICE}: a carrier of perfumery, and a denaturant`,
    verified: false,
  },
  { name: 'Benzene', cas: ['71-43-2'], anywhere: [], alone: ['benzene', 'benzol'], source: `${PRACTICE}; poisonous`, verified: false },
  { name: 'Toluene', cas: ['108-88-3'], anywhere: [], alone: ['toluene', 'toluol'], source: `${PRACTICE}; poisonous`, verified: false },
  {
    name: 'Dichloromethane',
    cas: ['75-09-2'],
    anywhere: ['dichloromethane'],
    alone: ['methylenechloride', 'dcm'],
    source: ours,
    verified: true,
  },
  {
    name: 'Chloroform',
    cas: ['67-66-3'],
    anywhere: [],
    alone: ['chloroform', 'trichloromethane'],
    source: `${PRACTICE}; poisonous`,
    verified: false,
  },
];
