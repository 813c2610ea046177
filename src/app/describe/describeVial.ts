import { scaled, type Measured } from '../../core/number/measured';
import type { Basis } from '../../core/liquid/strength';
import type { RecordOf } from '../../records/kind/kinds';
import { find } from '../../records/shelf';
import { formatDay, formatGiven, formatPlain, measuredText } from '../../ui/format';
import { strengthText } from '../../workshop/thing/strengthText';
import type { How, Result } from '../../ui/controls/result';
import { contentsNow, isVolatile, lossSince } from '../../workshop/thing/ageing';
import { facts, type Description } from './description';
import { doneFacts, dropsLine, wentIn } from './wentIn';
import { alcoholIsUnknownIn } from '../../workshop/thing/carrier';
import { tagOf } from '../../workshop/thing/labelled';

/** What a vial is called, and its line in a list. */
export function headOfVial(r: RecordOf<'vial'>): {
  readonly title: string;
  readonly line: string;
  readonly code: string;
} {
  return {
    title: r.name,
    line: `${strengthText(r)}${r.solvent ? ` in ${r.solvent.name}` : ''}, ${formatDay(r.madeOn)}`,
    code: tagOf(r),
  };
}

/** A vial in words: its strength with ±, what it was made of, and what can be done with it. */
export function describeVial(r: RecordOf<'vial'>): Description {
  return {
    ...headOfVial(r),
    ...(dropsLine(r.uses) ? { did: dropsLine(r.uses) } : {}),
    facts: [
      ...wentIn(r.uses),
      ...facts(
        ['Formula', formulaText(r)],
        ['Solvent', r.solvent?.name],
        ['Alcohol', alcoholIsUnknownIn(r).length > 0 ? 'not known' : ''],
        ['Solvent from', isEarlier(r) ? solventBottles(r) : ''],
        ['Amount made', measuredText(r.massG, 'g')],
        ['Vial', `${formatGiven(r.sizeMl)} mL`],
        ['Made', formatDay(r.madeOn)],
        ['Use by', formatDay(r.useBy)],
        ['Supplier', r.supplier],
        ['Lot', r.lot],
      ),
      ...doneFacts(r.done),
    ],
    results: contentsNow(r).map((part, i) => strengthResult(r, { part, asMade: r.contents[i]!.strength })),
  };
}

/** Whether it is a record of the first version. */
function isEarlier({ uses }: RecordOf<'vial'>): boolean {
  return uses.every(({ how }) => how === undefined);
}

/** The formula that a trial was counted from. */
function formulaText({ from, contents }: RecordOf<'vial'>): string {
  const [formula] = contents.length > 1 ? from.flatMap((id) => find('formula', id) ?? []) : [];
  return formula ? `${formula.name}, version ${formula.version}` : '';
}

/** Supplier and lot of the bottle that its solvent came from, where that was chosen. */
function solventBottles(r: RecordOf<'vial'>): string {
  const bottles = r.uses.flatMap(({ id }) => find('supply', id) ?? []);
  return bottles
    .map(({ name, supplier, lot }) => [supplier || name, lot && `lot ${lot}`].filter(Boolean).join(', '))
    .join('; ');
}

/** A strength (g of neat material per g of the vial's liquid) in the basis of the vial's label; % w/v where that needs what is not known. */
export function inLabelBasis(vial: RecordOf<'vial'>, strength: Measured): { amount: Measured; unit: string } {
  const basis = vial.label.basis as Basis;
  const byVolume = basis === '% w/v' || basis === 'mg/L';
  const factor =
    basis === '% w/w' ? 100 : basis === 'mg/kg' ? 1e6 : vial.densityGPerMl * (basis === 'mg/L' ? 1e6 : 100);
  const unit = byVolume || basis === '% w/w' || basis === 'mg/kg' ? basis : '% w/v';
  return { amount: scaled(strength, factor), unit };
}

/** Strength of one content of a vial, in the basis of its label. */
function strengthResult(
  vial: RecordOf<'vial'>,
  { part, asMade }: { part: RecordOf<'vial'>['contents'][number]; asMade: Measured },
): Result {
  const source = {
    words: 'Strength as made',
    text: measuredText(scaled(asMade, 100), '% w/w'),
    source: 'the run that made it',
  };
  const density = {
    words: 'Density of the dilution',
    text: `${formatPlain(vial.densityGPerMl)} g/mL at 20 °C`,
    source: 'from its parts, volumes added',
  };
  return {
    label: vial.contents.length > 1 ? part.name : 'Strength',
    ...inLabelBasis(vial, part.strength),
    how: {
      words: ['Mass of neat material over mass of the dilution; for % w/v times the density of the dilution.'],
      inputs: [source, ...sinceMade(vial), density],
    },
  };
}

/** What its solvent did since it was made: as found by weighing, and what may have gone since. */
function sinceMade(vial: RecordOf<'vial'>): How['inputs'][number][] {
  if (!isVolatile(vial)) return [];
  const found = (vial.weighed ?? []).flatMap(({ at, stronger }) => (stronger ? [{ at, stronger }] : []));
  const most = lossSince(vial) * 100;
  return [
    ...found.map(({ at, stronger }) => ({
      words: 'Stronger, by what evaporated',
      text: measuredText(stronger, 'times'),
      source: `weighed ${formatDay(at)}, and said so`,
    })),
    ...(most < 0.1
      ? []
      : [
          {
            words: 'May have evaporated since',
            text: `up to ${formatPlain(most, 2)} %`,
            source: `${vial.cap ?? 'not said how it is closed, so as a dropper cap'}; a guess: weigh it whole to know`,
          },
        ]),
  ];
}
