import type { Figure } from '../core/limits/figure';
import { rowsAbout, speaksOf } from '../core/limits/plant';
import { constituents } from '../tables/constituents';
import type { CatalogueRow, Cited } from '../tables/catalogue/row';
import { citedText, formatPlain } from '../ui/format';
import { catalogue } from './catalogue';
import { levelWords, rules } from './drinkable/limitRules';

/** One thing that is known of a material, with where it was read. */
export interface SheetLine {
  readonly label: string;
  readonly text: string;
  readonly source: string;
}

/** All that the catalogue knows of a material, in words. Only while the catalogue is here. */
export function catalogueSheet(row: CatalogueRow): SheetLine[] {
  const words = catalogue.value!.source;
  const cited = (label: string, pair: Cited<string | number> | undefined, unit = ''): SheetLine[] =>
    pair ? [{ label, text: `${show(pair[0])} ${unit}`.trim(), source: words(pair[1]) }] : [];
  return [
    ...cited('CAS', row.cas),
    ...cited('FEMA', row.fema),
    { label: 'At 20 °C', text: row.form[0] ?? 'not sure: look at it', source: row.form[1] },
    ...densityLine(row, words),
    ...cited('Melts at', row.melts, '°C'),
    ...cited('Boils at', row.boils, '°C'),
    ...cited('Flash point', row.flash, '°C'),
    ...cited('Dissolves in water', row.water, 'mg/L near 25 °C'),
    ...(row.smells
      ? [{ label: 'Smells of', text: row.smells.join(', '), source: row.smellsBy!.map(words).join('; ') }]
      : []),
    ...(row.thresholds ?? []).map(([medium, kind, low, high, unit, source]) => ({
      label: `Threshold in ${medium}`,
      text: `${show(low)}${high > low ? ` to ${show(high)}` : ''} ${unit}`,
      source: `${kind}; ${words(source)}`,
    })),
    ...euLines(row, words('I-EU1334')),
    ...(row.us ? [{ label: 'US', text: usText(row.us), source: words('I-FDA26') }] : []),
    ...(row.cramer
      ? [{ label: 'Cramer class', text: row.cramer[0], source: `${words(row.cramer[1])}, ${row.cramer[2]}` }]
      : []),
    ...ruleLines(row),
  ];
}

function show(value: string | number): string {
  return typeof value === 'number' ? formatPlain(value, 6) : value;
}

function densityLine(row: CatalogueRow, words: (id: string) => string): SheetLine[] {
  if (!row.density) return [];
  const [gPerMl, halfWidth, atC, source, how] = row.density;
  const text = `${citedText(gPerMl, halfWidth, 'g/mL')} at ${atC} °C`;
  return [{ label: 'Density', text, source: `${words(source)}; ${how}` }];
}

function usText(sections: readonly string[]): string {
  return sections.length > 0 ? `in the inventory; 21 CFR ${sections.join(', ')}` : 'in the inventory';
}

function euLines(row: CatalogueRow, source: string): SheetLine[] {
  if (!row.eu) return [];
  const [fl, limits, purity, footnote] = row.eu;
  const text = [
    `in the Union list, FL ${fl}`,
    limits,
    purity && `purity ${purity}`,
    footnote && 'with a footnote: look it up',
  ];
  return [{ label: 'EU', text: text.filter(Boolean).join('; '), source: `${source}. Later changes are not in it.` }];
}

/** Bans, limits and limited constituents that the tables hold for a CAS number or a plant. */
function ruleLines({ cas: cited, name, botanical, part }: CatalogueRow): SheetLine[] {
  const cas = cited?.[0] ?? '';
  const natural = { name, botanical, part, cas };
  const said = (figure: Figure) => [figure.source, figure.asOf, levelWords[figure.level]].filter(Boolean).join(', ');
  return [
    ...rules.bans
      .filter((ban) => ban.cas.includes(cas) || speaksOf(ban, natural))
      .map((ban) => ({ label: `${ban.jurisdiction} rule`, text: ban.rule, source: said(ban) })),
    ...rules.limits
      .filter((limit) => limit.cas.includes(cas))
      .map((limit) => ({
        label: `${limit.jurisdiction} ${limit.effect}`,
        text: `${limit.what}: ${formatPlain(limit.max)} ${limit.unit}, ${limit.drink} drinks${limit.where ? ` (${limit.where})` : ''}`,
        source: said(limit),
      })),
    ...rowsAbout(constituents, natural).map((one) => ({
      label: 'Brings with it',
      text: `${one.name} ${rangeText(one)}`,
      source: one.source,
    })),
  ];
}

function rangeText({
  low,
  high,
  typical,
}: {
  low: number | null;
  high: number | null;
  typical: number | null;
}): string {
  const percent = (x: number) => `${formatPlain(x * 100, 3)} %`;
  if (low !== null && high !== null) return `${percent(low)} to ${percent(high)}`;
  if (high !== null) return `up to ${percent(high)}`;
  if (low !== null) return `${percent(low)} or more`;
  return typical === null ? '' : `about ${percent(typical)}`;
}
