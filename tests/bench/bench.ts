import { backupBench } from './backupBench';
import { blendsBench } from './blendsBench';
import { convergenceBench } from './convergenceBench';
import { firstBottleBench } from './firstBottleBench';
import { holdBench } from './holdBench';
import { killsBench } from './killsBench';
import { layeringBench } from './layeringBench';
import { mutantsBench } from './mutantsBench';
import { residualsBench } from './residualsBench';
import { pagesBench } from './pagesBench';
import { phoneBench } from './phoneBench';
import { planBench } from './planBench';
import { searchBench } from './searchBench';
import { searchPaintBench } from './searchPaintBench';
import { touchesBench } from './touchesBench';

/**
 * The parts in the order they run; each prints one JSON line per case and its medians last. `npm run bench` runs all of them,
 * `npm run bench -- NAME` one, with what is written after the name: `-- plan FILE`, `-- mutants 100 src/core/drop`.
 */
const parts: Readonly<Record<string, (...rest: string[]) => Promise<void>>> = {
  plan: planBench,
  layering: layeringBench,
  blends: blendsBench,
  search: searchBench,
  searchPaint: searchPaintBench,
  touches: touchesBench,
  phone: phoneBench,
  pages: pagesBench,
  firstBottle: firstBottleBench,
  backup: backupBench,
  kills: killsBench,
  hold: holdBench,
  convergence: convergenceBench,
  mutants: mutantsBench,
  residuals: residualsBench,
};

const [name, ...rest] = process.argv.slice(2);
const part = parts[name ?? ''];
if (name === undefined) for (const run of Object.values(parts)) await run();
else if (part && Object.hasOwn(parts, name)) await part(...rest);
else {
  console.error(`There is no part “${name}”. Parts: ${Object.keys(parts).join(', ')}`);
  process.exitCode = 1;
}
