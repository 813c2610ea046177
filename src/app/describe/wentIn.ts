import { measured, scaled, type Measured } from '../../core/number/measured';
import type { Batch } from '../../records/kind/batch';
import type { Use } from '../../records/kind/quantity';
import type { Done } from '../../records/kind/record';
import { find } from '../../records/shelf';
import { formatKnown, formatMoment, formatPlain, measuredCells, measuredText, withLocalSign } from '../../ui/format';
import { weighedCells, weighedText } from '../../ui/weighed';
import { dropsText } from '../../workshop/dropWords';
import { calledNow } from '../../workshop/uses';
import type { Description } from './description';

/** What is stored, and how it is shown. */
const NEAT = { stored: 'neat', words: 'neat' };
const WAYS = { counted: { words: 'counted' }, weighed: { words: 'weighed' }, poured: { words: 'poured' } } as const;

type Facts = NonNullable<Description['facts']>;

/** The one line on a page whose record the first version made. */
const EARLIER = 'Made with an earlier version: the drops were not kept.';

/** What went into a thing: what of it, how much, from which lot and how that is known; in a record of the first version as far as it tells. */
export function wentIn(uses: readonly Use[]): Facts {
  const counted = uses.filter(({ drops }) => drops !== undefined);
  const all = counted.reduce((sum, { drops = 0 }) => sum + drops, 0);
  return [
    ...uses.map((use) => [useName(use), amountWords(use), sourceWords(known(use))] as const),
    ...(counted.length > 1 ? [['Drops in all', dropsText(all)] as const] : []),
    ...(uses.length > 0 && uses.every(({ how }) => how === undefined) ? [['What went in', EARLIER] as const] : []),
  ];
}

/** One thing that went in, as the page of what it went into lists it. */
export interface WentIn {
  readonly id: string;
  /** '3 drops', '14.8 mL'; what was only weighed has its grams here. */
  readonly amount: string;
  /** Code and strength, or the name of what has no code. */
  readonly name: string;
  /** The grams beside drops and mL, and how they are known. */
  readonly more: string;
  readonly lot: string;
}

/** What went in, a row each. */
export function wentInRows(uses: readonly Use[]): WentIn[] {
  return uses.map((use) => {
    const now = known(use);
    const { drops, ml, dropper, how } = now;
    const first = drops !== undefined ? dropsText(drops) : ml !== undefined ? `${formatPlain(ml, 3)} mL` : '';
    const by = how === 'counted' && dropper ? `from ${dropper.name}` : '';
    return {
      id: use.id,
      amount: first || massWords(use),
      name: useName(use),
      more: [first && massWords(use), by].filter(Boolean).join(' '),
      lot: now.lot ?? '',
    };
  });
}

/** '3 drops GING 1 %, 12 drops SWOR neat': all that was counted, in one line; '' where nothing was. */
export function dropsLine(uses: readonly Use[]): string {
  const counted = uses.flatMap((use) => (use.drops === undefined ? [] : `${dropsText(use.drops)} ${useName(use)}`));
  return counted.join(', ');
}

/** Code and strength of what was taken, as they were then; of a record of the first version as they are now. */
export function useName(use: Use): string {
  const { code, strength = '', name } = known(use);
  const strong = strength === NEAT.stored ? NEAT.words : withLocalSign(strength.replace(/ w\/v$/, ''));
  return [code ?? name ?? 'something that is gone', strong].filter(Boolean).join(' ');
}

/** A use with what its thing was called; in a record of the first version, what it is called today. */
function known(use: Use): Use {
  if (use.how !== undefined) return use;
  const thing = find('vial', use.id) ?? find('bottle', use.id) ?? find('supply', use.id);
  return thing ? { ...calledNow(thing), ...use } : use;
}

/** What was taken, g, with its ±. */
function massOf({ id, massG, u = 0 }: Use): Measured {
  return measured(massG, u, { id: `use:${id}`, words: 'as counted or weighed' });
}

/** The same for a table: g and ± in cells of their own. */
export function massCells(use: Use): ReturnType<typeof weighedCells> {
  return use.how === 'weighed' ? weighedCells(massOf(use)) : measuredCells(massOf(use));
}

function amountWords(use: Use): string {
  const { drops, ml } = use;
  return [
    ...(drops === undefined ? [] : [dropsText(drops)]),
    ...(ml === undefined ? [] : [`${formatPlain(ml, 3)} mL`]),
    massWords(use),
  ].join(', ');
}

function massWords(use: Use): string {
  const mass = massOf(use);
  if (use.massG < 1) return measuredText(scaled(mass, 1000), 'mg');
  return use.how === 'weighed' ? weighedText(mass) : measuredText(mass, 'g');
}

function sourceWords({ how, dropper, lot, supplier }: Use): string {
  const known = how === 'counted' && dropper ? `counted with ${dropper.name}` : how ? WAYS[how].words : '';
  return [known, supplier, lot && `lot ${lot}`].filter(Boolean).join(', ');
}

/** What was taken for a batch and got into nothing: of what, how much, and why with its lot. */
export function lostFacts({ uses, lost = [] }: Batch): Facts {
  return lost.map(({ id, massG, why }) => {
    const use = known(uses.find((one) => one.id === id) ?? { id, massG });
    const mass = formatKnown(measured(massG, use.u ?? 0, { id: `lost:${id}`, words: why }), { most: 3 });
    return [`Lost: ${useName(use)}`, `${mass} g`, [why, use.lot && `lot ${use.lot}`].filter(Boolean).join(', ')];
  });
}

/** When it was made, the plan that was chosen, and what did not go by it. */
export function doneFacts(done: Done | undefined): Facts {
  if (!done) return [];
  const { plan, slips = [] } = done;
  const several = (plan?.lines.length ?? 0) > 1;
  const error = plan?.error === undefined || !several ? '' : `; at most ${formatPlain(plan.error * 100, 2)} % off`;
  return [
    ['Begun', formatMoment(done.from)],
    ['Ended', formatMoment(done.to)],
    ...(plan
      ? [
          [
            'Planned',
            `${plan.lines.map(({ code, drops }) => `${dropsText(drops)} ${code}`).join(', ')}${error}`,
          ] as const,
        ]
      : []),
    ...slips.map((slip) => [`Not as planned: ${slip.what}`, slipWords(slip)] as const),
  ];
}

/** '3 drops, not 2: Counted on'. */
export function slipWords({ planned, counted, unit, way }: NonNullable<Done['slips']>[number]): string {
  const text = (x: number) => (unit === 'drops' ? dropsText(x) : `${formatPlain(x)} g`);
  return `${text(counted)}, not ${unit === 'drops' ? planned : text(planned)}: ${way}`;
}
