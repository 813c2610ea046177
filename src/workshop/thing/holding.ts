import { broughtBy, doesAddUp, type Brings } from '../../core/drink/ingredient';
import { gramPerMl } from '../../core/number/units';
import type { Bottle } from '../../records/kind/material';
import { find } from '../../records/shelf';

/** What a gram of what is in a bottle brings, g, where it is an extract, tincture, infusion, juice or puree; null of an aroma material, and where its numbers cannot be. */
export function holdingOf(bottle: Bottle): Brings | null {
  const { holds } = bottle;
  if (!holds) return null;
  const known = (bottle.density ?? find('material', bottle.material)?.density)?.gPerMl;
  const density = known === undefined ? undefined : gramPerMl(known);
  return doesAddUp(holds, density) ? broughtBy(holds, density) : null;
}
