import { judgeStage, type Stage } from '../../core/liquid/stage';
import { mediumOfDrink, mostAsked, solutesOf, solventSolutes } from '../../workshop/liquidStage';
import { carriersOf, isCloudy } from '../../workshop/thing/carrier';
import { formatPlain } from '../../ui/format';
import type { Glass } from './glass';

/** What all doses together ask of the drink; an emulsion is cloudy anyway, and asks nothing. */
function stageOfGlass({ base, dosings, dose }: Glass): Stage {
  const dosed = dosings.filter(({ vial }) => !isCloudy(vial));
  const litres = dose.volume.value / 1000; // mL per L
  const solutes = dosed.flatMap(({ vial, mass }) => {
    const mgPerL = (share: number) => (mass.value * share * 1000) / litres; // g to mg
    return [
      ...vial.contents.flatMap(({ material, name, strength }) => solutesOf(material, name, mgPerL(strength.value))),
      ...carriersOf(vial).flatMap(({ id, name, share }) => solventSolutes(id, name, mgPerL(share))),
    ];
  });
  const densityGPerMl = dose.mass.value / dose.volume.value;
  return judgeStage(solutes, mediumOfDrink({ abv: dose.abv.value, brix: base.facts.brix / 100, densityGPerMl }));
}

/** That the drink turns cloudy, or by the best estimate does, and how much of it all stays dissolved; '' where it dissolves or nothing is known. */
export function cloudyWords(glass: Glass): string {
  const { verdict, fullness, lines } = stageOfGlass(glass);
  if (fullness.middle <= 1) return '';
  const first = mostAsked({ lines });
  const all = lines.length > 1 ? `${first} most of all` : first;
  const holds = `${formatPlain(100 / fullness.high, 1)} to ${formatPlain(Math.min(100, 100 / fullness.low), 1)} % of it stay dissolved`;
  return verdict === 'stays cloudy'
    ? `It turns cloudy (${all}): ${holds}. Less, more alcohol, or an emulsion.`
    : `It may turn cloudy (${all}): ${holds}. Leave a glass for a day.`;
}
