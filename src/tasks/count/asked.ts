import { find, list } from '../../records/shelf';
import type { Vial } from '../../records/kind/vial';
import type { Option } from '../../ui/controls/field';
import { formatPlain } from '../../ui/format';
import { leftPhrase } from '../../ui/left';
import { leftOf } from '../../records/stock';
import { dropperOptions } from '../../workshop/onHand';
import { usualStep } from '../../workshop/scales';
import { smelledVials } from '../../workshop/smelledVials';
import { answer, ask } from '../engine/answers';
import type { Field } from '../engine/fields';
import type { RunState } from '../engine/fold';
import { asBefore, asIfLeft, lastTime, type Answers } from '../engine/lastTime';
import { oncePerRun } from '../engine/oncePerRun';
import { ANY, fields } from './fields';
import { holdsOnly, stocksOnHand, whyNotTaken, type Stock } from './stock';

/** The questions of a count as its card asks them now: as last time for this formula, else as last time, else as benches usually do. */
export const asked = oncePerRun((run: RunState) => {
  const options = ways();
  const way = asBefore(run, ask(fields.way, { options }), lastWay(), usualWay(run));
  const before = timesBefore(answer(run, way));
  const materials = linesOf(answer(run, way));
  const purpose = asBefore(run, fields.purpose, before, isAllFit(materials) ? 'taste' : 'smell');
  const nose = answer(run, purpose) === 'smell';
  const droppers = dropperOptions();
  return {
    way,
    purpose,
    ppm: asBefore(run, fields.ppm, before),
    drinkMl: asBefore(run, fields.drinkMl, before),
    base: asBefore(run, ask(fields.base, { options: drinks() }), before, 'water'),
    most: asBefore(run, fields.most, before, '100'),
    mix: asBefore(run, fields.mix, before, '1'),
    dropper: asBefore(run, ask(fields.dropper, { options: droppers }), before, droppers[0]!.value),
    stocks: materials.map((material) =>
      stockAsked(run, material, { way: answer(run, way), nose, before: before.map(fitStocks) }),
    ),
    readability: asBefore(run, fields.readability, before, usualStep()),
    before,
  };
});

/** The run as it would be with its card left as it is: what all of it is worked out from. */
export const settled = oncePerRun((run: RunState): RunState => {
  const { stocks, before: _, ...all } = asked(run);
  return asIfLeft(run, [...Object.values(all), ...stocks]);
});

/** Formulas on the Shelf, newest first, then what is typed here. */
function ways(): Option[] {
  const formulas = list('formula').map(({ id, name, version, lines }): Option => {
    const materials = lines.length === 1 ? '1 material' : `${lines.length} materials`;
    return { value: id, label: name, hint: `${materials}${version > 1 ? `, version ${version}` : ''}` };
  });
  const parts: Option = {
    value: 'materials',
    label: 'Materials and parts',
    short: 'materials',
    hint: 'a new formula; Minim finds the drops',
    group: 'Without a formula',
  };
  const hand: Option = {
    value: 'hand',
    label: 'Vials and drops',
    short: 'vials',
    hint: 'you say how many drops of each',
    group: 'Without a formula',
    always: true,
  };
  return [...formulas, ...(list('material').length > 0 ? [parts] : []), hand];
}

function usualWay(run: RunState): string {
  return answer(run, fields.handed) === null ? (list('formula')[0]?.id ?? 'hand') : 'hand';
}

const trials = () => list('vial').filter(({ sort }) => sort === 'trial');

/** What was counted last, unless a formula was written or changed since. */
function lastWay(): Answers[] {
  const [[trial], [formula]] = [trials(), list('formula')];
  const asked = trial?.done?.asked;
  return asked && (!formula || trial.made >= formula.made) ? [{ [fields.way.name]: asked[fields.way.name] ?? '' }] : [];
}

/** Answers of the last count of this formula, and of the last of any. */
function timesBefore(way: string | null): Answers[] {
  const same = trials().filter(({ from, done }) => from.includes(way ?? '') || done?.asked?.[fields.way.name] === way);
  return [same, trials()].flatMap((all) => (all[0] ? [lastTime(all), factsOf(all[0])] : []));
}

/** What a trial of the first version tells of how it was asked. */
function factsOf({ uses, sizeMl }: Vial): Answers {
  const dropper = uses[0]?.dropper?.id;
  return { [fields.size.name]: String(sizeMl), ...(dropper ? { [fields.dropper.name]: dropper } : {}) };
}

function linesOf(way: string | null): string[] {
  return [...new Set((find('formula', way)?.lines ?? []).map(({ material }) => material))];
}

/** Whether each material can be counted from something that is fit for drinks. */
function isAllFit(materials: readonly string[]): boolean {
  const stocks = stocksOnHand();
  return materials.every((material) => stocks.some((stock) => holdsOnly(stock, material) && !stock.smellOnly));
}

function drinks(): Option[] {
  const own = list('base').map(({ id, name, densityGPerMl }) => ({
    value: id,
    label: name,
    hint: `${formatPlain(densityGPerMl)} g/mL`,
  }));
  return [{ value: 'water', label: 'A drink that weighs like water', short: 'a drink like water' }, ...own];
}

/** What one material is counted from. Into a drink goes only what is fit for it. */
function stockAsked(
  run: RunState,
  material: string,
  { way, nose, before }: { way: string | null; nose: boolean; before: readonly Answers[] },
): Field<string> {
  const name = find('material', material)?.name ?? 'this material';
  const stocks = stocksOnHand().filter((stock) => holdsOnly(stock, material) && (nose || !stock.smellOnly));
  const options: Option[] = [
    { value: ANY, label: 'Whichever fits best', hint: 'the plan chooses', always: true },
    ...stocks.map(stockOption),
  ];
  const smelled = stocks.find((stock) => smelledVials(way).includes(stock.id) && whyNotTaken(stock) === null);
  const usual = smelled?.id ?? ANY; // what was smelled is what is made
  return asBefore(run, { ...ask(fields.stock(material), { options }), title: `${name} from` }, before, usual);
}

function stockOption(stock: Stock): Option {
  const against = [stock.smellOnly && 'smell only', whyNotTaken(stock)].filter(Boolean).join(', ');
  const record = find('vial', stock.id) ?? find('bottle', stock.id);
  const left = record && leftOf(record);
  return {
    value: stock.id,
    label: stock.tag,
    hint: [stock.what, left && leftPhrase(left, 'g')].filter(Boolean).join(' · '),
    ...(against ? { against } : {}),
  };
}

/** Answers of before without vials that are past their date, empty or put away. */
function fitStocks(answers: Answers): Answers {
  const stocks = stocksOnHand();
  const isFit = (id: string) => stocks.some((stock) => stock.id === id && whyNotTaken(stock) === null);
  return Object.fromEntries(Object.entries(answers).filter(([name, id]) => !name.startsWith('stock.') || isFit(id)));
}
