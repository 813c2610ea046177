import './count.css';
import type { Stock } from './stock';

/** What is in the vial that is to be taken, for a look before the first drop. */
export function VialToTake({ stock: { name, what, smellOnly } }: { stock: Stock }) {
  return (
    <p class="vial-to-take">
      <span>
        {name}, {what}
      </span>
      {smellOnly && <span class="smell-only">smell only</span>}
    </p>
  );
}
