import { CONCENTRATE } from '../../core/drink/batchPlan';
import { expanded } from '../../core/number/measured';
import type { Jurisdiction } from '../../core/limits/figure';
import type { Batch } from '../../records/kind/batch';
import { shelf } from '../../records/shelf';
import { alcoholIsUnknownOf } from '../drinkable/alcoholOf';
import { heldIn } from '../drinkable/judging';
import { partsOfBatch, pouredShare } from '../drinkable/partsOfDrink';
import { sinceOf } from '../made/since';
import type { DrinkToLabel, Put } from './drinkToLabel';

/** A batch that was kept, as a label has to tell of it: from what was weighed and how it became. */
export function batchToLabel(batch: Batch): DrinkToLabel {
  const { brix, abv, densityGPerMl, gas } = batch.drink;
  const { parts } = partsOfBatch(batch);
  return {
    market: batch.jurisdiction as Jurisdiction,
    name: batch.asked['label.name'] ?? '',
    netMl: netOf(batch),
    puts: putsOf(batch),
    parts,
    held: heldIn(parts),
    sugarPerL: brix.value * densityGPerMl.value * 10, // % and mL per L
    abv: abv.value,
    abvOff: expanded(abv),
    isAbvUnknown: alcoholIsUnknownOf(batch),
    densityGPerMl: densityGPerMl.value,
    volumes: gas?.volumes ?? 0,
    bestBefore: batch.keeping?.bestBefore ?? '',
    treated: batch.asked['treated'] ?? 'none',
    lot: batch.code ?? '',
  };
}

/** The bottles it was filled into last; else what was planned. */
function netOf(batch: Batch): number | null {
  const filled = sinceOf(batch, 'filled').at(-1);
  const planned = Number(batch.asked['label.ml'] ?? '');
  return filled?.ml ?? (planned > 0 ? planned : null);
}

function putsOf({ weighed, drink }: Batch): Put[] {
  const share = pouredShare(weighed);
  return weighed
    .filter(({ id }) => id !== CONCENTRATE)
    .map(({ id, name, into, massG, source, own = false, acid = 0 }) => ({
      id,
      name: name.replace(/, more$/, ''),
      gramsPerL: ((into === 'concentrate' ? share : 1) * massG.value) / drink.litres.value,
      source: shelf.records.value.get(source ?? '') ?? null,
      own,
      acid,
    }));
}
