import { isConfirmed } from '../../core/limits/figure';
import { formatPlain } from '../../ui/format';
import type { Judgement } from '../../workshop/drinkable/judging';

/** So many times the dose of now no one asks for: our choice. */
const FAR = 10;

/** The highest dose that passes, where it is of use: nothing where no maximum binds or it is far above the dose of now. */
export function HighestDose({ judgement: { ceilings } }: { judgement: Judgement }) {
  const [first] = ceilings;
  if (!first || first.times > FAR) return null;
  const { times, mgPerKg, finding, binding } = first;
  const by = finding.what === binding ? finding.what : `${finding.what}, through ${binding}`;
  const law = finding.figure && isConfirmed(finding.figure) ? '' : ' Check the law.';
  if (times === 0) return <p class="highest">No dose of it passes: {by}.</p>;
  return (
    <p class="highest">
      Highest dose that passes: {formatPlain(mgPerKg, 3)} mg/kg in all, {formatPlain(times, 2)} times as now ({by}).
      {law}
    </p>
  );
}
