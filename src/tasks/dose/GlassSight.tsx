import { formatKnown, formatPlain } from '../../ui/format';
import { attempt, outcome, Refused } from '../../workshop/attempt';
import type { Walk } from '../engine/task';
import { abvLines, abvWords } from './abvTerms';
import { DoseBar } from './DoseBar';
import { alcoholIsUnknown, countOf, glassOf, type Glass } from './glass';
import { levelsOf } from './levels';
import { judgedNow, judgeGlass } from './parts';
import { nameOf } from './results';
import { Rules } from './Rules';
import './dose.css';

/** What the drops of dose i made of the glass: where it is on the bar, what is in it, and what the rules say. */
export function drawSight(i: number) {
  return (walk: Walk) => <GlassSight walk={walk} i={i} />;
}

function GlassSight({ walk, i }: { walk: Walk; i: number }) {
  const run = walk.state.value;
  const glass = attempt(() => glassOf(run, i));
  if (!glass || glass instanceof Refused) return null;
  const judgement = outcome(() => (i === countOf(run) ? judgedNow(run) : judgeGlass(run, glass))).value;
  return (
    <div class="dosing">
      <DoseBar levels={levelsOf(run, glass, i)} />
      <Rules walk={walk} judgement={judgement} more={abvLines(glass)} />
      <Parts glass={glass} />
    </div>
  );
}

/** Every material in mg/kg, and the alcohol of the whole. */
function Parts({ glass }: { glass: Glass }) {
  const { materials, abv } = glass.dose;
  const isKnown = alcoholIsUnknown(glass).length === 0;
  const words = abvWords(glass);
  return (
    <dl class="glass-parts">
      {materials.length > 1 &&
        materials.map(({ material, mgPerKg }) => (
          <div>
            <dt>{nameOf(glass, material)}</dt>
            <dd>{formatKnown(mgPerKg)} mg/kg</dd>
          </div>
        ))}
      <div class="alcohol">
        <dt>alcohol</dt>
        <dd>{isKnown ? `${formatPlain(abv.value, 2)} % ABV${words && `, ${words}`}` : 'not known'}</dd>
      </div>
    </dl>
  );
}
