import { isOf, type AnyRecord } from '../../records/kind/kinds';
import type { Batch } from '../../records/kind/batch';
import { keep, list } from '../../records/shelf';
import { amount, choice, day, whole, words, type Field } from '../../tasks/engine/fields';
import { formatPlain } from '../../ui/format';
import { bottleNumbers, filledOf } from '../../workshop/made/bottles';
import { sinceOf, withFact } from '../../workshop/made/since';
import { today } from '../../workshop/today';
import { FormPage } from '../nav/FormPage';
import { useAnswers } from './useAnswers';

const YEAR = 365; // days that bottles are kept where nothing else is said: our choice
const MOST = 100_000;

/** Asks how many bottles were filled. */
export function FillPage({ record }: { record: AnyRecord }) {
  return isOf('batch', record) ? <Fill batch={record} /> : null;
}

function Fill({ batch }: { batch: Batch }) {
  const answers = useAnswers();
  const { next } = filledOf(batch);
  const last = list('batch')
    .flatMap((one) => sinceOf(one, 'filled'))
    .sort((a, b) => (a.at < b.at ? 1 : -1))[0];
  const count = whole({ name: 'count', title: 'Bottles filled', unit: 'bottles', min: 1, max: MOST });
  const ml = amount({
    name: 'ml',
    title: 'In each',
    unit: 'mL',
    above: 0,
    max: 50_000,
    preset: String(last?.ml ?? 330),
  });
  const first = whole({
    name: 'first',
    title: 'Number of the first',
    unit: '',
    min: next,
    max: MOST,
    preset: String(next),
  });
  const [n, each, from] = [answers.value(count), answers.value(ml), answers.value(first)];
  async function store(): Promise<boolean> {
    if (!answers.check(count, ml, first) || n === null || each === null || from === null) return false;
    await keep([withFact(batch, { fact: 'filled', first: from, count: n, ml: each })]);
    return true;
  }
  return (
    <FormPage title="Fill bottles" onKeep={store}>
      {[count, ml, first].map((field) => answers.input(field))}
      {n !== null && each !== null && from !== null && (
        <p role="status">{filledWords(batch, { first: from, count: n, ml: each })}</p>
      )}
    </FormPage>
  );
}

function filledWords(batch: Batch, { first, count, ml }: { first: number; count: number; ml: number }): string {
  const litres = formatPlain((count * ml) / 1000);
  return `${bottleNumbers(batch, first, first + count - 1)}: ${litres} L of ${formatPlain(batch.drink.litres.value, 4)} L.`;
}

const places = ['4 °C, dark', '20 to 25 °C, dark', 'frozen', 'elsewhere'] as const;
const placeField = choice({
  name: 'where',
  title: 'Where',
  preset: places[0],
  options: places.map((place) => ({ value: place, label: place })),
});
const otherField = words({ name: 'other', title: 'Where else', max: 60 });

/** Asks which bottles are put aside, where, and until when. */
export function AsidePage({ record }: { record: AnyRecord }) {
  return isOf('batch', record) ? <Aside batch={record} /> : null;
}

function Aside({ batch }: { batch: Batch }) {
  const answers = useAnswers();
  const last = filledOf(batch).next - 1;
  const number = (name: string, title: string, preset: number): Field<number> =>
    whole({ name, title, unit: '', min: 1, max: last, preset: String(preset) });
  const [from, to] = [number('from', 'From number', Math.max(1, last - 1)), number('to', 'To number', last)];
  const until = day({ name: 'until', title: 'Until', preset: today(YEAR) });
  const isElsewhere = answers.value(placeField) === 'elsewhere';
  const asked: Field[] = [from, to, placeField, ...(isElsewhere ? [otherField] : []), until];
  async function store(): Promise<boolean> {
    const [a, b, end] = [answers.value(from), answers.value(to), answers.value(until)];
    const where = answers.value<string>(isElsewhere ? otherField : placeField);
    if (!answers.check(...asked) || a === null || b === null || end === null || where === null) return false;
    await keep([withFact(batch, { fact: 'retained', from: Math.min(a, b), to: Math.max(a, b), where, until: end })]);
    return true;
  }
  return (
    <FormPage title="Put some aside" onKeep={store}>
      <p class="quiet">They come up on the Bench on that day, and can be tasted blind beside a later batch.</p>
      {asked.map((field) => answers.input(field))}
    </FormPage>
  );
}
