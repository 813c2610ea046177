/** Words that a label has to carry from so much of a substance on. */
export interface LabelWarning {
  readonly id: string;
  readonly market: 'EU' | 'US';
  readonly cas: readonly string[];
  /** mg per L from which on (`above`: over which) they are said; `strong` where that is another one above 1.2 % vol, null: never there. */
  readonly from: number;
  readonly strong?: number | null;
  readonly above?: boolean;
  readonly words: string;
  readonly source: string;
}

const III = 'Reg. (EU) 1169/2011 Annex III, read as reproduced';
const COLOURS = 'Reg. (EC) 1333/2008 Art. 24 and Annex V, from memory, check';
const QUININE = ['130-95-0', '130-89-2', '6119-47-7', '804-63-7', '6119-70-6'];
const GLYCYRRHIZIC = ['1405-86-3', '53956-04-0'];

/** Colours that the EU warns of; drinks above 1.2 % vol are free of it. CAS numbers from memory. */
const colours = [
  ['1934-21-0', 'tartrazine (E 102)'], ['8004-92-0', 'quinoline yellow (E 104)'], ['2783-94-0', 'sunset yellow (E 110)'],
  ['3567-69-9', 'azorubine (E 122)'], ['2611-82-7', 'ponceau 4R (E 124)'], ['25956-17-6', 'allura red (E 129)'],
] as const; // prettier-ignore

/** All of them. */
export const labelWarnings: readonly LabelWarning[] = [
  { id: 'caffeine', market: 'EU', cas: ['58-08-2'], from: 150, strong: null, above: true, words: 'High caffeine content. Not recommended for children or pregnant or breast-feeding women', source: `${III}, 4.1: in the same field of vision as the name, then the mg in 100 mL; not where coffee or tea is in the name. Its limit to drinks without alcohol is that of our row of limits` },
  { id: 'liquorice', market: 'EU', cas: GLYCYRRHIZIC, from: 10, words: 'Contains liquorice', source: `${III}, 3.1: right after the list of ingredients, unless liquorice is in it or in the name` },
  { id: 'liquorice-strong', market: 'EU', cas: GLYCYRRHIZIC, from: 50, strong: 300, words: 'Contains liquorice – people suffering from hypertension should avoid excessive consumption', source: `${III}, 3.2 and 3.3` },
  ...colours.map(([cas, name]) => ({ id: `colour-${cas}`, market: 'EU' as const, cas: [cas], from: 0, strong: null, above: true, words: `${name}: may have an adverse effect on activity and attention in children`, source: COLOURS })),
  { id: 'aspartame-us', market: 'US', cas: ['22839-47-0'], from: 0, above: true, words: 'PHENYLKETONURICS: CONTAINS PHENYLALANINE', source: '21 CFR 172.804, from memory, check' },
  { id: 'quinine-us', market: 'US', cas: QUININE, from: 0, above: true, words: 'Contains quinine', source: '21 CFR 172.575: the label says quinine prominently' },
];

/** Substances that the list of ingredients names right after "flavouring". Source: Reg. (EU) 1169/2011 Annex VII part D, from memory, check. */
export const namedFlavourings = [
  { name: 'caffeine', cas: ['58-08-2'] },
  { name: 'quinine', cas: QUININE },
] as const;
