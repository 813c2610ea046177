import { isOf } from '../../records/kind/kinds';
import { types } from '../engine/answers';
import type { Then } from '../engine/task';
import { drinkFields, fields } from './fields';

/** What a run is given so that the very drops of then fall into the same amount of the same drink; of several glasses the levels are the same. */
export function dosedAgain({ kept, exactly }: Then): Record<string, string> {
  const tastings = kept.flatMap((record) => (isOf('tasting', record) ? record : []));
  const [one] = tastings;
  if (!exactly || !one || tastings.length > 1 || one.glass) return {};
  const base = kept.find(({ kind }) => kind === 'base');
  const drops = one.doses.map(({ drops }, k) =>
    drops === null ? {} : { ...types(fields.aimIn(k + 1), 'drops'), [fields.aim(k + 1).name]: String(drops) },
  );
  return Object.assign({}, base ? types(drinkFields.base, base.id) : {}, ...drops);
}
