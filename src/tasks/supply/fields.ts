import { list } from '../../records/shelf';
import { answer, ask, isBegun } from '../engine/answers';
import { amount, choice, day, given, pick, whole, words, type Field } from '../engine/fields';
import type { RunState } from '../engine/fold';
import { asBefore, lastTime } from '../engine/lastTime';
import { formatTyped } from '../../ui/format';
import { neverFit } from '../../workshop/drinkable/neverFit';
import { goods, type Good } from './goods';

const grade = choice({
  name: 'grade',
  title: 'May it go into a drink?',
  options: [
    { value: 'fit for drinks', label: 'Food grade, nothing added', hint: 'the bottle says so', short: 'food grade' },
    {
      value: 'smell only',
      label: 'Denatured, or not known',
      hint: 'all that is diluted with it is smell only',
      short: 'smell only',
    },
  ],
});

/** What the first version asked, one supply a run, a solvent in g; its paused runs are read by it. */
export const before = {
  sort: given('sort', ['solvent', 'strips', 'vials', 'other']),
  solvent: pick({ name: 'solvent', title: 'Solvent' }),
  grade,
  grams: amount({ name: 'grams', title: 'Amount', unit: 'g', above: 0, max: 1e6 }),
  pieces: whole({ name: 'pieces', title: 'Amount', unit: 'pieces', min: 1, max: 1_000_000 }),
  name: words({ name: 'name', title: 'Name', max: 60 }),
  lot: words({ name: 'lot', title: 'Lot', optional: true, max: 40 }),
  useBy: day({ name: 'useBy', title: 'Best before', optional: true }),
};

/** What is said once of all that came. */
export const common = {
  supplier: words({ name: 'supplier', title: 'Supplier', optional: true, max: 80 }),
  box: words({ name: 'box', title: 'Box or shelf', optional: true, max: 20 }),
};

/** Whether a good came. */
export const came = ({ id }: Good) => given(`came.${id}`, ['yes', 'no']);

const unitField = (id: string) =>
  choice({
    name: `unit.${id}`,
    title: 'Unit',
    options: [
      { value: 'mL', label: 'mL' },
      { value: 'g', label: 'g' },
    ],
  });

/** What is asked of one good, as it is asked now; what a run of the first version has of it is in it. */
export function askedOf(run: RunState, good: Good) {
  const mine = goodOfBefore(run)?.id === good.id;
  const text = <T>(field: Field<T>) => (mine && isBegun(run, field) ? (answer(run, field) ?? '') : undefined);
  const grams = mine ? answer(run, before.grams) : null;
  const unit = ask(unitField(good.id), { preset: grams === null ? 'mL' : 'g' });
  const count = (mine && answer(run, before.pieces)) || good.pack;
  const called = named(good, text(before.name) as string | undefined);
  return {
    unit,
    amount: good.sort === 'solvent' ? amountOf(good, answer(run, unit), grams) : piecesOf(good, count),
    grade: gradeOf(mine && isBegun(run, before.grade) ? before.grade : { ...grade, name: `grade.${good.id}` }, called),
    name: called,
    lot: withText({ ...before.lot, name: `lot.${good.id}` }, text(before.lot)),
    useBy: withText({ ...before.useBy, name: `useBy.${good.id}` }, text(before.useBy)),
  };
}

/** Food grade is no answer for what has the name of something that never is. */
function gradeOf(field: typeof grade, { preset = '' }: Field): typeof grade {
  return ask(field, { refuse: (said) => (said === 'fit for drinks' ? neverFit(preset) : null) });
}

function withText<T>(field: Field<T>, preset: unknown): Field<T> {
  return ask(field, typeof preset === 'string' ? { preset } : {});
}

function named({ id, name }: Good, typed: string | undefined): Field<string> {
  const usual = id === 'other' ? '' : name;
  return words({ name: `name.${id}`, title: 'Name', max: 60, preset: typed ?? usual });
}

function amountOf({ id, name, pack }: Good, unit: string | null, grams: number | null): Field<number> {
  const asked = { name: `size.${id}`, title: `Amount of ${name}`, above: 0, max: 1e6 };
  if (unit === 'g') return amount({ ...asked, unit, preset: grams === null ? '' : formatTyped(grams, 12) });
  return amount({ ...asked, unit: 'mL', preset: String(pack) });
}

function piecesOf({ id, name }: Good, pack: number): Field<number> {
  return whole({
    name: `size.${id}`,
    title: `Amount of ${name}`,
    unit: 'pieces',
    min: 1,
    max: 1e6,
    preset: String(pack),
  });
}

/** The one supply of a run of the first version. */
function goodOfBefore(run: RunState): Good | undefined {
  const sort = answer(run, before.sort);
  const id = sort === 'solvent' ? answer(run, before.solvent) : sort;
  return goods().find((good) => good.id === id);
}

/** Whether it came: it was tapped, or a run of the first version is about it. */
export function isHere(run: RunState, good: Good): boolean {
  const said = answer(run, came(good));
  return said === null ? goodOfBefore(run)?.id === good.id : said === 'yes';
}

/** All that came. */
export function here(run: RunState): Good[] {
  return goods().filter((good) => isHere(run, good));
}

/** What is said of all that came, as last time; a run of the first version as it was left. */
export function askedOfAll(run: RunState) {
  const last = answer(run, before.sort) ? [] : [lastTime(list('supply')), ...list('supply').slice(0, 1).map(heldBy)];
  return { supplier: asBefore(run, common.supplier, last), box: asBefore(run, common.box, last) };
}

function heldBy({ supplier, box = '' }: { supplier: string; box?: string | undefined }) {
  return { [common.supplier.name]: supplier, [common.box.name]: box };
}
