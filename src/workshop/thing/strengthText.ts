import { plus } from '../../core/number/measured';
import type { Vial } from '../../records/kind/vial';
import { formatLike } from '../../ui/format';

/** The strength on a vial's label for lists and pickers, '1.07 % w/v': no digit that its ± does not leave. */
export function strengthText({ label, contents }: Pick<Vial, 'label' | 'contents'>): string {
  return `${formatLike(label.value, plus(...contents.map(({ strength }) => strength)), LIST)} ${label.basis}`;
}

const LIST = { most: 3 } as const; // our choice: a list is read at a glance
