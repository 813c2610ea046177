import { find, list } from '../../records/shelf';
import { formatPlain, formatTyped } from '../../ui/format';
import type { Option } from '../../ui/controls/field';
import { amount, choice, code, textOf, valueOf, whole, words, type Field } from '../engine/fields';
import type { RunState } from '../engine/fold';
import { dropperOptions } from '../../workshop/onHand';
import { numberedVialCode, vialCodes } from '../../workshop/thing/vialCode';
import { targetsIn, type Target } from './rounds';
import { stocksOnHand, type Stock } from './stock';

/** Formulas on the Shelf, newest first, then what is typed. */
function ways(): Option[] {
  const formulas = list('formula').map(({ id, name, version, lines }) => ({
    value: id,
    label: name,
    hint: `${lines.length === 1 ? '1 line' : `${lines.length} lines`}${version > 1 ? `, version ${version}` : ''}`,
  }));
  const typed = { value: 'materials', label: 'Materials and parts', hint: 'a new formula; Minim finds the drops' };
  return [
    ...formulas,
    ...(list('material').length > 0 ? [typed] : []),
    { value: 'hand', label: 'Vials and drops', hint: 'typed by hand: so many drops of each' },
  ];
}

/** The questions of a count. */
export const fields = {
  way: (run: RunState) =>
    choice({
      name: 'formula',
      title: 'Formula',
      options: ways(),
      ...(run.typed['vials'] === undefined ? {} : { preset: 'hand' }),
    }),
  planned: ({ id, tag, name, what }: Stock): Field<number> =>
    whole({ name: `plan.${id}`, title: `${tag} · ${name}`, unit: 'drops', min: 1, max: 500, help: what }),
  parts: ({ id, code, name }: { id: string; code: string; name: string }): Field<number> =>
    amount({ name: `part.${id}`, title: `${code} · ${name}`, unit: 'parts', above: 0, max: 1e6 }),
  purpose: choice({
    name: 'purpose',
    title: 'What is it for?',
    options: [
      { value: 'smell', label: 'To smell', hint: 'every vial may go in; only the proportions count' },
      {
        value: 'taste',
        label: 'To dose later',
        hint: 'only vials that are fit for drinks; only the proportions count',
      },
      { value: 'drink', label: 'All of it into one drink', hint: 'fit for drinks, and so many ppm of it' },
    ],
  }),
  ppm: amount({
    name: 'ppm',
    title: 'All neat material together',
    unit: 'mg/kg',
    above: 0,
    max: 1e5,
    help: 'ppm by mass in the finished drink.',
  }),
  drinkMl: amount({ name: 'drinkMl', title: 'The finished drink', unit: 'mL', above: 0, max: 1e5 }),
  base: () =>
    choice({
      name: 'base',
      title: 'Drink',
      preset: 'water',
      options: [
        { value: 'water', label: 'Weighs like water' },
        ...list('base').map(({ id, name, densityGPerMl }) => ({
          value: id,
          label: name,
          hint: `${formatPlain(densityGPerMl)} g/mL`,
        })),
      ],
    }),
  most: whole({ name: 'most', title: 'Drops at most', unit: 'drops', min: 1, max: 300, preset: '100' }),
  mix: choice({
    name: 'mix',
    title: 'Vials for one material',
    preset: '1',
    options: [
      { value: '1', label: 'One' },
      { value: '2', label: 'Up to two', hint: 'often nearer, one more vial to open' },
    ],
  }),
  dropper: () => choice({ name: 'dropper', title: 'Dropper', options: dropperOptions() }),
  name: words({ name: 'name', title: 'Name of the trial', max: 60 }),
  code: () => code({ name: 'code', title: 'Code on the vial', taken: vialCodes(), preset: numberedVialCode('T') }),
  size: (fillMl: number) =>
    amount({ name: 'size', title: 'Size of the vial', unit: 'mL', above: 0, max: 1000, preset: usualSize(fillMl) }),
};

const SIZES = [5, 10, 15, 20, 30]; // mL, the vials of the bench

/** The smallest usual vial that this much, mL, fits into with some air. */
function usualSize(fillMl: number): string {
  return formatTyped(SIZES.find((size) => fillMl <= 0.9 * size) ?? Math.ceil(fillMl / 0.9));
}

/** 'hand' for vials and drops typed, the id of a formula, or '' while nothing is chosen. */
export function wayOf(run: RunState): string {
  return textOf(run, fields.way(run));
}

/** The drops asked for: the plan that was chosen, or what was typed for each vial picked. */
export function asked(run: RunState): Target[] {
  if (wayOf(run) !== 'hand' || run.typed['exactly']) return targetsIn(run.typed['plan'] ?? '');
  const typed = pickedStocks(run).map((stock) => ({ id: stock.id, drops: valueOf(run, fields.planned(stock)) }));
  return typed.flatMap(({ id, drops }) => (drops === null ? [] : [{ id, drops }]));
}

/** What the run is called: its own name, or that of its formula. */
export function nameOf(run: RunState): string {
  return run.typed['name'] || (find('formula', wayOf(run))?.name ?? '');
}

/** The dropper of the run; a typical one while none is chosen. */
export function dropperOf(run: RunState): string {
  return valueOf(run, fields.dropper()) ?? 'typical';
}

/** Stocks that were picked by hand or handed over (`vials`, ids with spaces between), in the order of picking. */
export function pickedStocks(run: RunState): Stock[] {
  const handed = (run.typed['vials'] ?? '').split(/[\s,]+/);
  const touched = Object.keys(run.typed).flatMap((key) => (key.startsWith('pick.') ? [key.slice(5)] : []));
  const stocks = stocksOnHand();
  return [...new Set([...handed, ...touched])]
    .filter((id) => isPicked(run, id))
    .flatMap((id) => stocks.find((stock) => stock.id === id) ?? []);
}

/** Whether a stock is picked. */
export function isPicked(run: RunState, id: string): boolean {
  const typed = run.typed[`pick.${id}`];
  return typed === undefined ? (run.typed['vials'] ?? '').split(/[\s,]+/).includes(id) : typed === 'yes';
}
