import { heatUnits, BREWERS, type Moment } from '../../../core/keeping/heat';
import { outcome } from '../../../workshop/attempt';
import type { Field } from '../../engine/fields';
import { bad, good, type Answer } from '../../engine/readAmount';

/** A heating from its log: minutes and °C in pairs, '0 20, 10 62, 30 62'; empty where there is none. */
export const heatLog: Field<readonly Moment[]> = {
  name: 'heat.log',
  title: 'Temperature log',
  input: 'text',
  help: 'Minutes and °C, pair after pair: 0 20, 10 62, 30 62, 45 25.',
  read: readLog,
};

function readLog(text: string): Answer<readonly Moment[]> {
  if (text.trim() === '') return good([]);
  const numbers = text.split(/[\s,;]+/).filter((one) => one !== '').map((one) => Number(one.replace(/[^\d.]/g, 'x'))); // prettier-ignore
  if (numbers.length % 2 === 1 || numbers.some((one) => !Number.isFinite(one)))
    return bad('A log is minutes and °C in turn, with a point in numbers: 0 20, 10 62.5, 30 62.5.');
  const moments = numbers.flatMap((atC, i) => (i % 2 === 1 ? [{ minutes: numbers[i - 1]!, atC }] : []));
  const { problem } = outcome(() => ({ units: heatUnits(moments, BREWERS) }));
  return problem === null ? good(moments) : bad(problem);
}
