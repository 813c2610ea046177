import { isOf, type AnyRecord } from '../../records/kind/kinds';
import type { Batch } from '../../records/kind/batch';
import type { Quantity } from '../../records/kind/since';
import { keep, list } from '../../records/shelf';
import { amount, choice, type Field } from '../../tasks/engine/fields';
import { formatPlain } from '../../ui/format';
import { typedText } from '../../core/number/typed';
import { attempt, Refused } from '../../workshop/attempt';
import { besidePlan, refractometerExpects } from '../../workshop/made/measured';
import { sinceOf, withFact } from '../../workshop/made/since';
import { FormPage } from '../nav/FormPage';
import { route } from '../nav/route';
import { measuredWords, quantities } from '../describe/quantities';
import { useAnswers, type Answers } from './useAnswers';

const byField = choice({
  name: 'by',
  title: 'Measured with',
  preset: 'refractometer',
  options: [
    { value: 'refractometer', label: 'Refractometer', hint: 'it also shows acid and alcohol' },
    { value: 'density', label: 'Density meter or hydrometer', hint: 'alcohol lowers what it shows' },
  ],
});
const warmth = amount({ name: 'atC', title: 'Temperature of the drink', unit: '°C', min: 0, max: 40 });

function valueField(of: Quantity): Field<number> {
  const { shows, in: unit, most } = quantities[of];
  return amount({ name: 'value', title: shows, unit, min: of === 'gas' ? -1 : 0, max: most });
}

/** The ± of the instrument as it was said last for this quantity, else what is usual. */
function spreadField(of: Quantity): Field<number> {
  const readings = list('batch').flatMap((batch) => sinceOf(batch, 'reading').filter((one) => one.of === of));
  const last = readings.sort((a, b) => (a.at < b.at ? 1 : -1))[0];
  return amount({
    name: 'spread',
    title: '± of the instrument',
    unit: quantities[of].in,
    min: 0,
    max: quantities[of].most,
    preset: last ? typedText(2 * last.u) : quantities[of].usual,
    help: last ? 'As last time.' : 'Typical; check yours.',
  });
}

/** Writes down what was measured of a batch. */
export function MeasurePage({ record }: { record: AnyRecord }) {
  const of = route.value[3] as Quantity;
  return isOf('batch', record) && of in quantities ? <Measuring batch={record} of={of} /> : null;
}

function Measuring({ batch, of }: { batch: Batch; of: Quantity }) {
  const answers = useAnswers();
  const { name, how } = quantities[of];
  const fields = [
    ...(of === 'brix' ? [byField] : []),
    valueField(of),
    ...(of === 'gas' ? [warmth] : []),
    spreadField(of),
  ];
  const next = readingIn(batch, of, answers);
  async function store(): Promise<boolean> {
    if (!answers.check(...fields) || !next) return false;
    await keep([next]);
    return true;
  }
  return (
    <FormPage title={name} onKeep={store}>
      <p class="quiet">{how}</p>
      {fields.map((field) => answers.input(field))}
      <Outcome batch={next} of={of} />
      {of === 'brix' && answers.value(byField) === 'refractometer' && <Expects batch={batch} />}
    </FormPage>
  );
}

/** The batch with the reading; null while it is not complete. */
function readingIn(batch: Batch, of: Quantity, answers: Answers): Batch | null {
  const [value, spread] = [answers.value(valueField(of)), answers.value(spreadField(of))];
  const atC = of === 'gas' ? answers.value(warmth) : null;
  const by = of === 'brix' ? answers.value(byField) : null;
  if (value === null || spread === null || (of === 'gas' && atC === null)) return null;
  const reading = { fact: 'reading' as const, of, value, u: spread / 2 };
  return withFact(batch, { ...reading, ...(by === null ? {} : { by }), ...(atC === null ? {} : { atC }) });
}

/** What the reading says of the drink. */
function Outcome({ batch, of }: { batch: Batch | null; of: Quantity }) {
  if (!batch || of === 'pH') return null;
  const found = attempt(() => besidePlan(batch).find((one) => one.of === of)!);
  if (found instanceof Refused)
    return (
      <p class="trouble" role="alert">
        {found.problem}
      </p>
    );
  const also = found.alsoShows ?? 0;
  const [low, high] = [Math.abs(also) > 0.005, of === 'brix' || of === 'gas'];
  return high ? (
    <p role="status">
      {of === 'gas' ? 'So there are' : 'So its sugar is'} {measuredWords(found)}
      {low && `: ${formatPlain(also, 2)} of what it shows is acid and alcohol`}.
    </p>
  ) : null;
}

function Expects({ batch }: { batch: Batch }) {
  const expected = attempt(() => refractometerExpects(batch));
  return expected instanceof Refused ? null : (
    <p class="quiet">If made as weighed, it should read {formatPlain(expected, 3)}.</p>
  );
}
