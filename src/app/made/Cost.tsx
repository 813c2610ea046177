import { isOf, type AnyRecord } from '../../records/kind/kinds';
import type { Batch } from '../../records/kind/batch';
import { changeSettings, shelf } from '../../records/shelf';
import { optionalAmount } from '../../tasks/engine/fields';
import { typedText } from '../../core/number/typed';
import { formatPlain } from '../../ui/format';
import { BOTTLE, costLines, costOfBatch, DUTY, WORK, type CostLine } from '../../workshop/made/cost';
import { Facts } from '../describe/Facts';
import { FormPage } from '../nav/FormPage';
import { go } from '../nav/route';
import { useAnswers } from './useAnswers';

/** What a batch cost: all that went into it, gas and bottles too, in the money of the prices. */
export function CostSection({ batch }: { batch: Batch }) {
  const { all, perLitre, perBottle, open } = costOfBatch(batch);
  const facts: readonly (readonly [string, string])[] = [
    ['All of it', formatPlain(all, 3)],
    ['A litre', formatPlain(perLitre, 3)],
    ...(perBottle === null ? [] : [['A bottle', formatPlain(perBottle, 3)] as const]),
  ];
  return (
    <section>
      <h2>Cost</h2>
      {all > 0 && <Facts facts={facts} />}
      <p class="quiet">
        In the money of your prices{withoutDues(batch)}.
        {open.length > 0 && ` Without a price, and not in it: ${open.join(', ')}.`}
      </p>
      <button class="second" onClick={() => go(['record', batch.id, 'prices'])}>
        Prices
      </button>
    </section>
  );
}

/** '; work and duty are not in it': what of them has no price. */
function withoutDues(batch: Batch): string {
  const names = costLines(batch).flatMap(({ name, price, optional }) => (optional && price === null ? [name] : []));
  if (names.length === 0) return '';
  return `; ${names.join(' and ')} ${names.length > 1 ? 'are' : 'is'} not in it`;
}

/** Prices of what has no bottle on the Shelf: kept for all batches. */
export function PricesPage({ record }: { record: AnyRecord }) {
  return isOf('batch', record) ? <Prices batch={record} /> : null;
}

function Prices({ batch }: { batch: Batch }) {
  const answers = useAnswers();
  const lines = costLines(batch);
  const asked = lines.filter(({ by }) => by === 'settings');
  const others = lines.filter(({ by, price }) => by === 'bottle' && price === null);
  const prices = shelf.settings.value.prices ?? {};
  const fields = asked.map((line) => priceField(line, prices[line.id]));
  async function store(): Promise<boolean> {
    if (!answers.check(...fields)) return false;
    const next = { ...prices };
    asked.forEach(({ id }, i) => {
      const price = answers.value(fields[i]!);
      if (price === null) delete next[id];
      else next[id] = price;
    });
    await changeSettings({ prices: next });
    return true;
  }
  return (
    <FormPage title="Prices" onKeep={store}>
      <p class="quiet">They are kept for every batch. Water and what is left empty count nothing.</p>
      {fields.map((field) => answers.input(field))}
      {others.length > 0 && (
        <p>The price of these is on the page of their bottle: {others.map(({ name }) => name).join(', ')}.</p>
      )}
    </FormPage>
  );
}

const TITLES: Readonly<Record<string, string>> = {
  [BOTTLE]: 'A bottle with lid and label',
  [WORK]: 'Work on a batch',
  [DUTY]: 'Duty on a litre of pure alcohol',
};

function priceField({ id, name }: CostLine, price: number | undefined) {
  return optionalAmount({
    name: `price.${id}`,
    title: TITLES[id] ?? `A kilogram of ${name}`,
    unit: 'your currency',
    min: 0,
    max: 1_000_000,
    preset: price === undefined ? '' : typedText(price),
  });
}
