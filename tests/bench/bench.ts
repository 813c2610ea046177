import { dropPlanBench } from './dropPlanBench';
import { firstBottleBench } from './firstBottleBench';
import { killBench } from './killBench';
import { layeringBench } from './layeringBench';
import { phoneBench } from './phoneBench';
import { restoreBench } from './restoreBench';
import { searchBench } from './searchBench';
import { searchPaintBench } from './searchPaintBench';

/** Benches in the order they run; each prints one JSON line per case and its medians last. */
const benches: readonly ((file?: string) => Promise<void>)[] = [
  dropPlanBench,
  layeringBench,
  searchBench,
  searchPaintBench,
  phoneBench,
  firstBottleBench,
  restoreBench,
  killBench,
];

const file = process.argv[2]; // instances of the drop-plan bench, same JSON shape as tests/reference/dropPlans.json
for (const bench of benches) await bench(file);
