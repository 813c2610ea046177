import { isLabelled, type AnyRecord } from '../../records/kind/kinds';
import { calledOf } from '../../workshop/thing/labelled';
import { describe } from '../describe/describe';

/** Things with one letter that are drawn without another tap. */
export const WITH_LETTER = 240;

/** The first letter or digit of its code, else of its name. */
export function letterOf(record: AnyRecord): string {
  const words = isLabelled(record) ? calledOf(record).code : describe(record).title;
  return [...words][0]?.toLocaleUpperCase() ?? '–';
}
