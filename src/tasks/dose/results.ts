import { scaled, type Measured } from '../../core/number/measured';
import { formatPlain, measuredText } from '../../ui/format';
import type { How, Result } from '../../ui/controls/result';
import { contentsNow } from '../../workshop/thing/ageing';
import { dropsText } from '../../workshop/dropWords';
import { unknownWords } from '../../workshop/thing/alcohol';
import { alcoholIsUnknown, reachedBy, type Dosing, type Glass } from './glass';
import { tagOf } from '../../workshop/thing/labelled';

const BY_MASS =
  'Mass of the material, that is mass of the drops times strength of the vial, over mass of the drink with the dose in it.';

/** What the last dose brought the glass to, of all that its vial holds: mg/kg first, then mg/L. */
export function reachedResults(glass: Glass): Result[] {
  const { vial } = glass.dosings.at(-1)!;
  const { mgPerKg, mgPerL } = reachedBy(vial, glass.dose);
  return pair(glass, { name: vial.name, mgPerKg, mgPerL });
}

/** Every material of the glass in mg/kg, and the alcohol of the whole. */
export function glassResults(glass: Glass): Result[] {
  const each = glass.dose.materials.map((one) => {
    const [mgPerKg] = pair(glass, { ...one, name: nameOf(glass, one.material) });
    return mgPerKg!;
  });
  return [...each, alcoholResult(glass)];
}

/** Name of a material in the glass. */
export function nameOf({ dosings }: Glass, material: string): string {
  const parts = dosings.flatMap(({ vial }) => vial.contents);
  return parts.find((part) => part.material === material)?.name ?? 'a material';
}

function pair(glass: Glass, reached: { name: string; mgPerKg: Measured; mgPerL: Measured }): Result[] {
  const inputs = [...glass.dosings.map(dosingInput), massInput(glass)];
  const perLitre = 'The same over the volume of the drink: mg/kg times its density.';
  return [
    { label: reached.name, amount: reached.mgPerKg, unit: 'mg/kg', how: { words: [BY_MASS], inputs } },
    {
      label: 'by volume',
      amount: reached.mgPerL,
      unit: 'mg/L',
      how: { words: [BY_MASS, perLitre], inputs: [...inputs, volumeInput(glass)] },
    },
  ];
}

function alcoholResult(glass: Glass): Result {
  const { abv, ethanolAdded } = glass.dose;
  const inputs = [
    { words: 'The drink before', text: `${formatPlain(glass.base.facts.abv)} % ABV`, source: 'typed' },
    {
      words: 'Ethanol that came with the drops',
      text: measuredText(ethanolAdded, 'mL'),
      source: 'solvents of the vials',
    },
    volumeInput(glass),
  ];
  const words = ['Ethanol of the drink and of the solvents, over the volume of the whole. Volumes are added.'];
  const unknown = alcoholIsUnknown(glass);
  const result = { label: 'Alcohol of the whole', amount: abv, unit: '% ABV', how: { words, inputs } };
  return unknown.length === 0
    ? result
    : { ...result, words: 'not known', how: { words: [unknownWords(unknown)], inputs: [] } };
}

type Input = How['inputs'][number];

function dosingInput({ vial, drop, drops, mass }: Dosing): Input {
  const strength = contentsNow(vial).map((part) => measuredText(scaled(part.strength, 100), `% w/w ${part.name}`));
  const amount =
    drop === null || drops === null
      ? measuredText(scaled(mass, 1000), 'mg, weighed')
      : `${dropsText(drops)} of ${measuredText(drop.mgPerDrop, 'mg')}`;
  return {
    words: `${tagOf(vial)}: ${strength.join(', ')}`,
    text: amount,
    source: drop === null ? 'your scale; vial as it is now' : `drop ${drop.source}; vial as it is now`,
  };
}

function massInput({ base }: Glass): Input {
  const density = `density ${formatPlain(base.facts.densityGPerMl)} g/mL, typed, or computed from °Brix and % ABV`;
  return { words: base.facts.name, text: measuredText(base.drink.mass, 'g'), source: density };
}

function volumeInput({ dose }: Glass): Input {
  return {
    words: 'Volume of the whole',
    text: measuredText(dose.volume, 'mL'),
    source: 'drink and drops, volumes added',
  };
}
