import type { LabelLayout } from '../../core/label/label';
import type { Labelled } from '../../workshop/thing/labelled';
import type { LabelOf } from '../describe/labelOf';

/** A label laid out for the chosen size and printer. */
export interface ReadyLabel extends LabelOf {
  readonly record: Labelled;
  /** Code and name, for those who do not see it and for file names. */
  readonly title: string;
  readonly layout: LabelLayout;
}
