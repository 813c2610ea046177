import { list } from '../../records/shelf';
import { formatGiven } from '../../ui/format';
import { outcome } from '../../workshop/attempt';
import { chips } from '../engine/card';
import { answerIn, type Field } from '../engine/fields';
import type { RunState } from '../engine/fold';
import type { SlotFacts } from '../engine/task';
import { asked } from './asked';
import { describedBase, isWeighed } from './drink';
import { drinkFields } from './fields';

/** The slots of the drink and how much of it is in a glass. */
export function drinkSlots(run: RunState): Record<string, SlotFacts> {
  const { by, slack } = asked(run);
  const { value: base, problem: noRoom } = outcome(() => describedBase(run));
  const { name, brix, abv, density } = drinkFields;
  const amount = {
    usual: chips(['30', '100', '250', '1000'], isWeighed(run) ? 'g' : 'mL'),
    beside: [by, slack],
    ...wrongIn(whyWrong(run, [slack])),
  };
  return {
    'base.ml': amount,
    'base.g': { ...amount, missing: 'the grams of drink' },
    base: { missing: 'the drink' },
    [name.name]: {
      missing: list('base').length > 0 ? 'its name' : 'the drink',
      beside: [brix, abv, density],
      ...(base ? { shows: `${base.name}, ${formatGiven(base.brix)} °Brix, ${formatGiven(base.abv)} % ABV` } : {}),
      ...wrongIn(noRoom ?? whyWrong(run, [brix, abv, density])),
    },
  };
}

function wrongIn(why: string | undefined): SlotFacts {
  return why === undefined ? {} : { wrong: why };
}

/** Why one of the fields beside a slot is no answer, in one sentence. */
function whyWrong(run: RunState, beside: readonly Field[]): string | undefined {
  return beside.flatMap((field) => {
    const given = answerIn(run, field);
    return given.ok ? [] : given.why;
  })[0];
}
