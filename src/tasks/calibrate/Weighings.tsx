import { useRef } from 'preact/hooks';
import { MG_PER_G } from '../../core/number/units';
import { FieldInput } from '../../ui/controls/FieldInput';
import { formatFigures } from '../../ui/format';
import { answer, isBegun } from '../engine/answers';
import { inRun, textOf } from '../engine/fields';
import type { Walk } from '../engine/task';
import { asked, fields } from './fields';
import { oddOnes, weighingsOf, type Weighing } from './readings';
import './weighings.css';

/** The weighings one under the other, each with a switch that leaves it out, and room for the next. Enter goes to the next. */
export function Weighings({ walk }: { walk: Walk }) {
  const list = useRef<HTMLOListElement>(null);
  const run = walk.state.value;
  const odd = new Set(oddOnes(run).map(({ i }) => i));
  const known = weighingsOf(run);
  let rows = 1;
  while (isBegun(run, fields.mass(rows)) && answer(run, fields.mass(rows)) !== null) rows++;
  const onNext = (from: number) => list.current?.querySelectorAll('input')[from]?.focus();
  return (
    <ol class="weighings" ref={list}>
      {Array.from({ length: rows }, (_, at) => {
        const weighing = known.find(({ i }) => i === at + 1);
        const look = weighing?.out ? 'out' : odd.has(at + 1) ? 'odd' : '';
        return (
          <li key={at} class={look} onKeyDown={({ key }) => key === 'Enter' && onNext(at + 1)}>
            <Mass walk={walk} i={at + 1} />
            <span class="each">{weighing ? perDrop(weighing) : 'what the scale shows'}</span>
            {weighing && <Leave walk={walk} weighing={weighing} />}
          </li>
        );
      })}
    </ol>
  );
}

function perDrop({ massG, drops }: Weighing): string {
  return `${formatFigures((MG_PER_G * massG) / drops, 3)} mg`;
}

/** Leaves a weighing out, or puts it back. */
function Leave({ walk, weighing: { i, out } }: { walk: Walk; weighing: Weighing }) {
  const field = fields.out(i);
  return (
    <button class="second" onClick={() => void walk.happen({ type: 'typed', key: field.name, text: out ? '' : 'yes' })}>
      {out ? 'Put back' : 'Leave out'}
      <span class="unseen"> weighing {i}</span>
    </button>
  );
}

/** What the scale showed; the drops of the weighing are typed with it. */
function Mass({ walk, i }: { walk: Walk; i: number }) {
  const run = walk.state.value;
  const field = inRun(run, fields.mass(i));
  const text = textOf(run, field);
  const read = field.read(text);
  return (
    <FieldInput
      field={field}
      text={text}
      problem={text.trim() === '' || read.ok ? undefined : read.why}
      onText={(typed) => {
        const drops = answer(run, fields.drops(i)) ?? answer(run, asked(run).each);
        return walk.happen(
          { type: 'typed', key: field.name, text: typed },
          ...(drops === null ? [] : [{ type: 'typed' as const, key: fields.drops(i).name, text: String(drops) }]),
        );
      }}
    />
  );
}
