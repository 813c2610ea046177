import type { AnyRecord } from '../../records/kind/kinds';
import { newRecord } from '../../records/shelf';
import type { Supply } from '../../records/kind/supply';
import { askAbout } from '../engine/answers';
import { amount, choice, day, valueOf, whole, words } from '../engine/fields';
import type { RunState } from '../engine/fold';
import { neverFit } from '../../workshop/drinkable/neverFit';
import { solventOptions, solventsOnHand } from '../../workshop/onHand';
import type { Step, Task } from '../engine/task';
import { Refusal } from '../../core/text/refusal';

const names: Readonly<Record<string, string>> = {
  solvent: '',
  strips: 'paper strips',
  vials: 'empty vials',
  other: '',
};

const fields = {
  sort: choice({
    name: 'sort',
    title: 'What is it?',
    options: [
      { value: 'solvent', label: 'A solvent', hint: 'what vials take of it is counted off' },
      { value: 'strips', label: 'Paper strips', hint: 'each layering counts them off' },
      { value: 'vials', label: 'Empty vials', hint: 'each vial made counts one off' },
      { value: 'other', label: 'Something else' },
    ],
  }),
  solvent: () => choice({ name: 'solvent', title: 'Solvent', options: solventOptions() }),
  grade: choice({
    name: 'grade',
    title: 'May it go into a drink?',
    options: [
      { value: 'fit for drinks', label: 'Food grade, nothing added', hint: 'the bottle says so' },
      { value: 'smell only', label: 'Denatured, or not known', hint: 'all that is thinned with it is smell only' },
    ],
  }),
  name: (preset: string) => words({ name: 'name', title: 'Name', max: 60, preset }),
  grams: amount({
    name: 'grams',
    title: 'Amount',
    unit: 'g',
    above: 0,
    max: 1e6,
    help: 'One litre of ethanol 96 % weighs 807 g.',
  }),
  pieces: whole({ name: 'pieces', title: 'Amount', unit: 'pieces', min: 1, max: 1_000_000 }),
  supplier: words({ name: 'supplier', title: 'Supplier', optional: true, max: 80 }),
  lot: words({ name: 'lot', title: 'Lot', optional: true, max: 40 }),
  box: words({ name: 'box', title: 'Box or shelf it stands in', optional: true, max: 20 }),
  useBy: day({ name: 'useBy', title: 'Use by, from the label', optional: true }),
};

function solventOf(run: RunState) {
  return run.typed['sort'] === 'solvent' ? solventsOnHand().find(({ id }) => id === run.typed['solvent']) : undefined;
}

/** Whether this bottle may go into a drink, asked of each solvent by itself. */
function gradeField(run: RunState) {
  return askAbout(run, fields.grade, run.typed['solvent'] ?? '');
}

/** Why a bottle that was called food grade is none, by the name that was typed; null where it may be. */
function neverFitSaid(run: RunState): string | null {
  const name = valueOf(run, fields.name(usualName(run)));
  return name !== null && valueOf(run, gradeField(run)) === 'fit for drinks' ? neverFit(name) : null;
}

function usualName(run: RunState): string {
  return solventOf(run)?.name ?? names[run.typed['sort'] ?? ''] ?? '';
}

function steps(run: RunState): Step[] {
  const liquid = run.typed['sort'] === 'solvent';
  const what: Step = { key: 'solvent', say: 'Which solvent?', ask: [fields.solvent()] };
  const grade: Step = {
    key: 'grade',
    say: 'May this bottle go into a drink?',
    more: ['Read the label. In doubt it is for the nose only.'],
    ask: [gradeField(run)],
  };
  const { name, grams, pieces, supplier, lot, box, useBy } = fields;
  const never = liquid ? neverFitSaid(run) : null;
  return [
    { key: 'sort', say: 'What do you put on the Shelf?', ask: [fields.sort] },
    ...(liquid ? [what] : []),
    ...(solventOf(run)?.foodPossible ? [grade] : []),
    {
      key: 'label',
      say: 'How much, and from whom?',
      ask: [name(usualName(run)), liquid ? grams : pieces, supplier, lot, useBy, box],
      done: 'Put it on the Shelf',
      ...(never ? { problem: never } : {}),
    },
  ];
}

function keep(run: RunState): AnyRecord[] {
  const sort = valueOf(run, fields.sort) as Supply['sort'] | null;
  const liquid = sort === 'solvent';
  const food = solventOf(run)?.foodPossible && valueOf(run, gradeField(run)) === 'fit for drinks' && !neverFitSaid(run);
  const amountOf = valueOf(run, liquid ? fields.grams : fields.pieces);
  const name = valueOf(run, fields.name(usualName(run)));
  if (sort === null || amountOf === null || name === null) throw new Refusal('Something is still missing: go back.');
  const [useBy, box] = [valueOf(run, fields.useBy), valueOf(run, fields.box)];
  return [
    newRecord('supply', {
      name,
      sort,
      amount: amountOf,
      unit: liquid ? 'g' : 'pieces',
      ...(liquid ? { solvent: run.typed['solvent']!, grade: food ? 'fit for drinks' : 'smell only' } : {}),
      supplier: valueOf(run, fields.supplier) ?? '',
      lot: valueOf(run, fields.lot) ?? '',
      ...(useBy ? { useBy } : {}),
      ...(box ? { box } : {}),
    }),
  ];
}

/** What a repeat begins with. Its grade is what the label of this bottle says. */
const repeats = ['sort', 'solvent', 'name', 'supplier', 'box'];

/** What the bench uses up beside materials, onto the Shelf. */
export const supply: Task = {
  id: 'supply',
  recorded: true,
  title: (run) => ['Add a supply', usualName(run)].filter(Boolean).join(' · '),
  steps,
  keep,
  repeats,
};
