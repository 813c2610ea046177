import type { Jurisdiction, Trait } from '../../core/limits/figure';
import { massFraction } from '../../core/number/units';
import { shelf } from '../../records/shelf';
import { ADULT } from '../../tables/drinkers';
import {
  judgeParts,
  LOT,
  type FinishedDrink,
  type Judgement,
  type Line,
  type Part,
} from '../../workshop/drinkable/judging';
import { amount, choice, optionalAmount, textOf, valueOf } from '../engine/fields';
import type { RunState } from '../engine/fold';

/** The questions of the limits panel. Shares of a certificate and traits are kept under keys of their own. */
export const judgeFields = {
  /** What the settings say, until it is switched in the run. */
  get jurisdiction() {
    return choice({
      name: 'jurisdiction',
      title: 'Rules of',
      preset: shelf.settings.value.jurisdiction ?? 'EU',
      options: [
        { value: 'EU', label: 'EU' },
        { value: 'US', label: 'US' },
      ],
    });
  },
  portion: amount({
    name: 'portion',
    title: 'Drunk in a day',
    unit: 'g',
    above: 0,
    max: 10_000,
    preset: String(ADULT.portionG),
  }),
  body: amount({ name: 'body', title: 'Body weight', unit: 'kg', above: 0, max: 500, preset: String(ADULT.bodyKg) }),
  certificate: (material: string, constituent: { cas: string; name: string }) =>
    optionalAmount({
      name: `cert.${material}.${constituent.cas}`,
      title: constituent.name,
      unit: '% w/w',
      min: 0,
      max: 100,
    }),
};

/** Key under which a trait is typed, 'yes' or 'no'. */
export function traitKey(trait: Trait): string {
  return `trait.${trait}`;
}

/** What the rules say of the parts of a drink; null while portion or body weight is not a number. */
export function judge(run: RunState, parts: readonly Part[], drink: FinishedDrink): Judgement | null {
  const [portionG, bodyKg] = [valueOf(run, judgeFields.portion), valueOf(run, judgeFields.body)];
  if (portionG === null || bodyKg === null) return null;
  return judgeParts(parts, drink, {
    jurisdiction: textOf(run, judgeFields.jurisdiction) as Jurisdiction,
    portionG,
    bodyKg,
    saidOf: (trait) => run.typed[traitKey(trait)],
    typed: (material, published) => typedLines(run, material, published),
  });
}

/** What was typed from a certificate in this run. */
function typedLines(run: RunState, id: string, published: readonly { cas: string; name: string }[]): Line[] {
  return published.flatMap(({ cas, name }) => {
    const percent = valueOf(run, judgeFields.certificate(id, { cas, name }));
    return percent === null ? [] : [{ cas, name, share: massFraction(percent / 100), from: LOT }];
  });
}
