import type { Batch } from '../../records/kind/batch';
import { formatDay, formatPlain, formatShare, measuredText } from '../../ui/format';
import { asideOf, bottleNumbers, filledOf } from '../../workshop/made/bottles';
import { keep } from '../../records/shelf';
import { sinceOf, withFact } from '../../workshop/made/since';
import { today } from '../../workshop/today';
import { Facts } from '../describe/Facts';
import { go } from '../nav/route';

/** Bottles that were filled with their numbers, what is in none, and those that were put aside. */
export function BottlesSection({ batch }: { batch: Batch }) {
  const isNone = filledOf(batch).count === 0;
  return (
    <section>
      <h2>Bottles</h2>
      {isNone ? <p class="quiet">None filled yet.</p> : <Facts facts={factsOf(batch)} stacked />}
      {asideOf(batch)
        .filter(({ until }) => until <= today())
        .map(({ id, from, to }) => (
          <button class="second" onClick={() => void keep([withFact(batch, { fact: 'gone', of: id })])}>
            {bottleNumbers(batch, from, to)}: opened or thrown away
          </button>
        ))}
      <div class="row">
        <button class="second" onClick={() => go(['record', batch.id, 'fill'])}>
          Fill bottles
        </button>
        <button class="second" disabled={isNone} onClick={() => go(['record', batch.id, 'aside'])}>
          Put some aside
        </button>
      </div>
    </section>
  );
}

/** Fillings, what is in no bottle, and bottles put aside. */
function factsOf(batch: Batch): Fact[] {
  const { litres, rest, yielded } = filledOf(batch);
  return [
    ...sinceOf(batch, 'filled').map(({ first, count, ml, at }): Fact => [
      bottleNumbers(batch, first, first + count - 1),
      `${count} × ${formatPlain(ml)} mL`,
      formatDay(at),
    ]),
    ['In bottles', `${formatPlain(litres)} L, ${formatShare(yielded)} of what was made`],
    ['In none of them', rest.value < 0 ? 'less than nothing: count again' : measuredText(rest, 'L')],
    ...asideOf(batch).map(({ from, to, where, until }): Fact => [
      `Put aside: ${bottleNumbers(batch, from, to)}`,
      `until ${formatDay(until)}`,
      where,
    ]),
  ];
}

type Fact = readonly [label: string, text: string, more?: string];
