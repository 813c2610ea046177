import type { RecordOf } from '../../records/kind/kinds';
import { find } from '../../records/shelf';
import { cautionWords } from '../../workshop/cautionWords';
import { citedText, formatDay, formatPlain } from '../../ui/format';
import { facts, type Description } from './description';
import { labelTagOf } from '../../workshop/thing/labelled';
import { allergenWords } from '../../workshop/drinkable/allergensIn';

type Material = RecordOf<'material'>;

type Fact = readonly [label: string, text: string, source?: string];

function densityFact(density: Material['density']): Fact[] {
  if (!density) return [];
  return [['Density', `${citedText(density.gPerMl, density.halfWidth, 'g/mL')} at ${density.atC} °C`, density.source]];
}

function citedFact(label: string, cited: { value: number; source: string } | undefined, unit: string): Fact[] {
  return cited ? [[label, `${formatPlain(cited.value, 6)} ${unit}`, cited.source]] : [];
}

/** A material in words, every value with its source. */
export function describeMaterial(r: Material): Description {
  return {
    title: r.name,
    line: [r.family ?? r.sort, r.form, (r.smells ?? []).slice(0, 3).join(', ')].filter(Boolean).join(', '),
    code: r.code,
    facts: [
      ...facts(
        ['CAS', r.cas],
        ['FEMA', r.fema],
        ['Plant', r.botanical],
        ['Part of the plant', r.part],
        ['Form at 20 °C', r.form],
      ),
      ...densityFact(r.density),
      ...facts(
        ['Purity, at least', r.purity && `${formatPlain(r.purity * 100)} %`],
        ['Sold as at least', r.purity ? undefined : r.soldAtLeast && `${formatPlain(r.soldAtLeast * 100)} %`],
      ),
      ...citedFact('Melts at', r.melts, '°C'),
      ...citedFact('Boils at', r.boils, '°C'),
      ...citedFact('Flash point', r.flash, '°C'),
      ...citedFact('Dissolves in water', r.water, 'mg/L'),
      ...facts(['Smells of', r.smells?.join(', ')], ['Also called', r.also?.join(', ')]),
      ...(r.thresholds ?? []).map(thresholdFact),
      ...cautionWords(r.cautions).map((words) => ['Caution', words] as const),
      ...(r.notes ?? []).map((note) => ['Note', note] as const),
    ],
  };
}

function thresholdFact(one: NonNullable<Material['thresholds']>[number]): Fact {
  const range = one.high > one.low ? `${formatPlain(one.low)} to ${formatPlain(one.high)}` : formatPlain(one.low);
  return [`Threshold in ${one.medium}`, `${range} ${one.unit}`, `${one.kind}; ${one.source}`];
}

/** A bottle in words; what its certificate says stands before what the catalogue says. */
export function describeBottle(r: RecordOf<'bottle'>): Description {
  const material = find('material', r.material);
  return {
    title: material?.name ?? 'a material that is gone',
    line: [r.supplier, r.lot && `lot ${r.lot}`].filter(Boolean).join(', '),
    code: labelTagOf(r), // its lot is in the line
    facts: [
      ...facts(
        ['Supplier', r.supplier],
        ['Lot', r.lot],
        ['Received', formatDay(r.received)],
        ['Opened', formatDay(r.opened)],
        ['Amount when it came', r.amountG && `${formatPlain(r.amountG)} g`],
        ['Price', r.pricePerG && r.amountG && `${formatPlain(r.pricePerG * r.amountG, 4)} a bottle`],
        ['Price of 10 g', r.pricePerG && formatPlain(r.pricePerG * 10, 3)],
        ['Purity, at least', r.purity && `${formatPlain(r.purity * 100)} %`],
      ),
      ...densityFact(r.density ?? material?.density),
      ...holdsFacts(r),
      ...cautionWords(material?.cautions ?? []).map((words) => ['Caution', words] as const),
    ],
  };
}

/** What an extract, tincture, infusion, juice or puree holds. */
function holdsFacts({ holds = {}, allergens }: RecordOf<'bottle'>): Fact[] {
  const { brix, abv, acid, solids } = holds;
  const said = (value: number | undefined, unit: string, times = 100) =>
    value === undefined ? undefined : `${formatPlain(value * times, 4)} ${unit}`;
  return facts(
    ['Sugar', said(brix, '°Brix', 1)],
    ['Alcohol', said(abv, '% vol')],
    ['Acid, as citric acid', said(acid, 'g/100 g')],
    ['Dry matter', said(solids, '%')],
    ['Allergens', allergens && (allergenWords(allergens) || 'none of those that a label names')],
  ).map(([label, text]) => [label, text]);
}
