import type { AnyRecord } from '../../records/kind/kinds';
import { list, newRecord } from '../../records/shelf';
import { Refusal } from '../../core/text/refusal';
import { formatPlain } from '../../ui/format';
import { answer } from '../engine/answers';
import { chips } from '../engine/card';
import type { Field } from '../engine/fields';
import type { RunState } from '../engine/fold';
import type { SlotFacts, Step, Task } from '../engine/task';
import { askedOf, askedOfAll, common, here } from './fields';
import type { Good } from './goods';
import { GoodsList } from './GoodsList';

const remembers = [common.supplier, common.box].map(({ name }) => name);

/** What one good that came asks, in the order of its line. */
function fieldsOf(run: RunState, good: Good): Field[] {
  const { amount, unit, grade, name, lot, useBy } = askedOf(run, good);
  return [
    ...(good.id === 'other' ? [name] : []),
    amount,
    ...(good.sort === 'solvent' ? [unit] : []),
    ...(good.foodPossible ? [grade] : []),
    lot,
    useBy,
  ];
}

function slotsOfGood(run: RunState, good: Good): Record<string, SlotFacts> {
  const { amount, unit, grade, name, lot, useBy } = askedOf(run, good);
  return {
    [name.name]: { missing: 'its name' },
    [amount.name]: {
      missing: `the amount of ${good.name}`,
      usual: chips(good.packs.map(String), amount.unit ?? ''),
      ...(good.sort === 'solvent' ? { beside: [unit] } : {}),
    },
    [grade.name]: { missing: 'grade', asks: `Say the grade of ${good.name}` },
    [lot.name]: { missing: 'lot', optional: true },
    [useBy.name]: { missing: 'best before', optional: true },
  };
}

function usualTexts(of: 'supplier' | 'box'): SlotFacts {
  const texts = [...list('supply'), ...list('bottle')].map((one) => one[of] ?? '');
  const usual = [...new Set(texts)].filter(Boolean).slice(0, 6);
  return { missing: of, optional: true, usual: usual.map((value) => ({ value, label: value })) };
}

/** All on one page: what came is tapped in a list, and says its own amount and grade there. */
function goodsStep(run: RunState): Step<'goods'> {
  const all = here(run);
  const { supplier, box } = askedOfAll(run);
  const ungraded = all.find((good) => good.foodPossible && answer(run, askedOf(run, good).grade) === null);
  const problem = all.length === 0 ? 'Tap what came.' : ungraded && `Say the grade of ${ungraded.name}.`;
  return {
    key: 'goods',
    say: 'What came, and from whom.',
    ask: [supplier, box, ...all.flatMap((good) => fieldsOf(run, good))],
    card: {
      sentence: `Came from {supplier}${answer(run, box) ? ', kept in {box}' : ''}`,
      slots: Object.assign(
        { [supplier.name]: usualTexts('supplier'), [box.name]: usualTexts('box') },
        ...all.map((good) => slotsOfGood(run, good)),
      ),
      chips: [box.name],
    },
    draw: (walk) => <GoodsList walk={walk} />,
    told: all.map((good) => [good.name, toldOf(run, good)]),
    ...(problem ? { problem } : {}),
    done: all.length > 1 ? `Save ${all.length}` : 'Save',
  };
}

function toldOf(run: RunState, good: Good): string {
  const { amount, lot } = askedOf(run, good);
  const given = answer(run, amount);
  const said = [
    given !== null && `${formatPlain(given)} ${amount.unit}`,
    answer(run, lot) && `lot ${answer(run, lot)}`,
  ];
  return [...said, good.sort === 'solvent' && gradeOf(run, good)].filter(Boolean).join(', ');
}

/** Smell only, unless a food grade of it is sold and its label was said to be one. */
function gradeOf(run: RunState, good: Good): 'fit for drinks' | 'smell only' {
  return (good.foodPossible && answer(run, askedOf(run, good).grade)) || 'smell only';
}

function supplyOf(run: RunState, good: Good): AnyRecord {
  const { amount, unit, name, lot, useBy } = askedOf(run, good);
  const { supplier, box } = askedOfAll(run);
  const [given, called] = [answer(run, amount), answer(run, name)];
  if (given === null || called === null) throw new Refusal('Something is still missing: go back.');
  const grams = answer(run, unit) === 'g' ? given : Number((given * (good.gPerMl ?? 1)).toPrecision(12));
  const liquid = good.sort === 'solvent';
  const [bestBefore, stands] = [answer(run, useBy), answer(run, box)];
  return newRecord('supply', {
    name: called,
    sort: good.sort,
    amount: liquid ? grams : given,
    unit: liquid ? 'g' : 'pieces',
    ...(liquid ? { solvent: good.id, grade: gradeOf(run, good) } : {}),
    supplier: answer(run, supplier) ?? '',
    lot: answer(run, lot) ?? '',
    ...(bestBefore ? { useBy: bestBefore } : {}),
    ...(stands ? { box: stands } : {}),
  });
}

/** What the bench uses up beside materials, onto the Shelf: all that came at once. */
export const supply: Task<'goods'> = {
  id: 'supply',
  recorded: true,
  title(run) {
    const [first, ...more] = here(run);
    return ['Add supplies', first?.name].filter(Boolean).join(' · ') + (more.length > 0 ? ' and more' : '');
  },
  steps: (run) => [goodsStep(run)],
  keep(run) {
    const all = here(run);
    if (all.length === 0) throw new Refusal('Something is still missing: go back.');
    return all.map((good) => supplyOf(run, good));
  },
  remembers,
  repeats: [...remembers, 'came.', 'size.', 'unit.', 'name.', 'sort', 'solvent', 'name'],
};
