import { FieldInput } from '../../ui/controls/FieldInput';
import { formatPlain } from '../../ui/format';
import { partsForSwap } from '../../workshop/sensory/odourActivity';
import { answerIn, textOf } from '../engine/fields';
import type { Walk } from '../engine/task';
import { linesOf, materialOptions, nextKey, percentOf, rowsOf, type Row } from './lines';
import './formula.css';

/** The lines of a formula: the material can be swapped, the parts typed, others added. 0 parts take one out. */
export function drawLines(walk: Walk) {
  return <LinesEditor walk={walk} />;
}

function LinesEditor({ walk }: { walk: Walk }) {
  const run = walk.state.value;
  const rows = rowsOf(run);
  const taken = new Set(rows.map(({ material }) => material));
  const free = materialOptions().filter(({ value }) => !taken.has(value));
  const type = (key: string, text: string) => void walk.happen({ type: 'typed', key, text });
  return (
    <div class="formula-lines">
      {rows.map((row) => (
        <Line key={row.key} walk={walk} row={row} free={free} onType={type} />
      ))}
      <label class="pick">
        <span>Add a material</span>
        <select
          value=""
          onChange={(event) => event.currentTarget.value && type(nextKey(run), event.currentTarget.value)}
        >
          <option value="">Choose …</option>
          {free.map(({ value, label }) => (
            <option value={value}>{label}</option>
          ))}
        </select>
      </label>
    </div>
  );
}

interface LineProps {
  walk: Walk;
  row: Row;
  free: readonly { value: string; label: string }[];
  onType: (key: string, text: string) => void;
}

function Line({ walk, row, free, onType }: LineProps) {
  const run = walk.state.value;
  const text = textOf(run, row.parts);
  const answer = answerIn(run, row.parts);
  return (
    <section class="line">
      <label class="pick">
        <span class="share">{percentOf(linesOf(run), row.material)}</span>
        <select
          aria-label={`${row.name}: swap for another`}
          value={row.material}
          onChange={(event) => onType(`swap.${row.key}`, event.currentTarget.value)}
        >
          <option value={row.material}>{row.name}</option>
          {free.map(({ value, label }) => (
            <option value={value}>{label}</option>
          ))}
        </select>
      </label>
      <FieldInput
        field={{ ...row.parts, title: `Parts of ${row.name}` }}
        text={text}
        problem={answer.ok || text === '' ? undefined : answer.why}
        onText={(typed) => onType(row.parts.name, typed)}
      />
      {swapWords(row) && <p class="note">{swapWords(row)}</p>}
    </section>
  );
}

/** How strong what was swapped in may be beside what it replaces, by thresholds; '' where nothing was swapped. */
function swapWords({ key, material }: Row): string {
  if (key === material || key.startsWith('add.')) return '';
  const range = partsForSwap(key, material);
  const held = 'The others keep their parts.';
  if (!range) return `${held} Of one of the two no threshold in water is known: how strong it is has to be smelled.`;
  const [low, high] = [formatPlain(range.low, 1), formatPlain(range.high, 1)];
  return `${held} By thresholds in water it takes ${low === high ? `about ${low}` : `${low} to ${high}`} times the parts to be as noticeable: an order of size, no recipe.`;
}
