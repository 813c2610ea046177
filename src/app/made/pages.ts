import { AsidePage, FillPage } from './BottlesPages';
import { PricesPage } from './Cost';
import { MeasurePage } from './MeasurePage';
import { MendPage } from './MendPage';
import { LookPage, TrialPage } from './TrialPages';

/** The pages under that of a batch, by the part of the address after its id. */
export const madePages = {
  measure: MeasurePage,
  mend: MendPage,
  fill: FillPage,
  aside: AsidePage,
  trial: TrialPage,
  look: LookPage,
  prices: PricesPage,
} as const;
