/** Bottles of the made-up workshop, in the order they came. Suppliers, lots and prices are invented. */
export interface BottleScript {
  readonly name: string;
  readonly code: string;
  /** Entry of the catalogue; none for a material typed by hand. */
  readonly row?: string;
  readonly daysAgo: number;
  readonly typed: Readonly<Record<string, string>>;
}

const FOOD = { 'new.grade': 'fit for drinks' };
const BARN = { 'new.supplier': 'Mudlark Aroma Barn' };
const OILS = { 'new.supplier': 'Pebblewick Oils' };

export const bottles: readonly BottleScript[] = [
  {
    name: 'pink grapefruit oil',
    code: 'PGF',
    row: 'grapefruit-oil',
    daysAgo: 212,
    typed: {
      ...OILS,
      ...FOOD,
      'new.lot': 'PG-117',
      'new.amount': '9',
      'new.price': '14',
      'new.box': 'A',
      'new.row': '1',
    },
  },
  {
    name: 'cardamom oil',
    code: 'CARD',
    row: 'cardamom-oil',
    daysAgo: 58,
    typed: {
      ...OILS,
      ...FOOD,
      'new.lot': 'C-2208',
      'new.amount': '5',
      'new.price': '21',
      'new.density': '0.926',
      'new.box': 'A',
      'new.row': '1',
    },
  },
  {
    name: 'rhubarb extract',
    code: 'RHU',
    daysAgo: 57,
    typed: {
      ...BARN,
      ...FOOD,
      'new.form': 'liquid',
      'new.lot': 'R-09',
      'new.amount': '20',
      'new.density': '0.98',
      'new.box': 'A',
      'new.row': '2',
    },
  },
  {
    name: 'cis-3-hexen-1-ol',
    code: 'HEX3',
    row: 'cis-3-hexen-1-ol',
    daysAgo: 57,
    typed: {
      ...BARN,
      ...FOOD,
      'new.lot': 'H-31',
      'new.amount': '5',
      'new.purity': '98',
      'new.box': 'A',
      'new.row': '2',
    },
  },
  {
    name: 'nootkatone',
    code: 'NOOT',
    row: 'nootkatone',
    daysAgo: 56,
    typed: {
      ...BARN,
      ...FOOD,
      'new.lot': 'N-4',
      'new.amount': '1',
      'new.purity': '98',
      'new.box': 'A',
      'new.row': '3',
    },
  },
  {
    name: 'beta-ionone',
    code: 'ION',
    row: 'beta-ionone',
    daysAgo: 56,
    typed: {
      'new.supplier': 'Gannet Row Naturals',
      'new.grade': 'smell only',
      'new.lot': 'I-77',
      'new.amount': '5',
      'new.box': 'B',
    },
  },
  {
    name: 'pink grapefruit oil',
    code: 'PGF',
    daysAgo: 20,
    typed: {
      ...BARN,
      ...FOOD,
      'new.lot': '24-630',
      'new.amount': '9',
      'new.price': '16',
      'new.density': '0.856',
      'new.box': 'A',
      'new.row': '1',
    },
  },
];
