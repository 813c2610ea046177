import { BESIDE_LIMIT, formatLike, measuredText } from '../../ui/format';
import { FieldInput } from '../../ui/controls/FieldInput';
import { attempt, Refused } from '../../workshop/attempt';
import { dropsText, offWords } from '../../workshop/dropWords';
import { answerIn, textOf, type Field } from '../engine/fields';
import type { Walk } from '../engine/task';
import { dropFor, fields, sumOf } from './sum';
import './lookup.css';

/** All questions of the sum on one sheet, answered as they are typed. */
export function drawSheet(walk: Walk) {
  return <Sheet walk={walk} />;
}

function Sheet({ walk }: { walk: Walk }) {
  const run = walk.state.value;
  const sum = attempt(() => sumOf(run));
  const drop = sum && !(sum instanceof Refused) ? sum.drop : dropFor(run, 0);
  return (
    <div class="sums">
      {sum instanceof Refused && (
        <p class="trouble" role="alert">
          {sum.problem}
        </p>
      )}
      {sum === null && <p class="quiet">Fill in what is missing: the sum follows.</p>}
      <div class="pair">
        <Typed walk={walk} field={fields.strength(textOf(run, fields.basis))} unitBeside />
        <Picked walk={walk} field={fields.basis} />
      </div>
      <div class="pair wide">
        <Picked walk={walk} field={fields.liquid} />
        <Picked walk={walk} field={fields.dropper()} />
      </div>
      <div class="pair">
        <Typed walk={walk} field={fields.drops} />
        <Typed walk={walk} field={{ ...fields.mgPerDrop, help: `empty: ${measuredText(drop.mgPerDrop, 'mg')}` }} />
      </div>
      <div class="pair">
        <Typed walk={walk} field={fields.drink(textOf(run, fields.by))} unitBeside />
        <Picked walk={walk} field={fields.by} />
      </div>
      <div class="pair">
        <Typed walk={walk} field={{ ...fields.density, help: '11 °Brix 1.04, 40 % ABV 0.95' }} />
        <Typed walk={walk} field={fields.ppm} />
      </div>
      <p class="wanted" aria-live="polite">
        {sum && !(sum instanceof Refused) && sum.wanted
          ? `${dropsText(sum.wanted.drops)}: ${formatLike(sum.wanted.mgPerKg, sum.drop.mgPerDrop, BESIDE_LIMIT)} mg/kg, ${offWords(sum.wanted.error)}`
          : 'Type what you want, and read the drops here.'}
      </p>
    </div>
  );
}

/** A number to type; `unitBeside` where its unit is the list at its side. */
function Typed({ walk, field, unitBeside }: { walk: Walk; field: Field; unitBeside?: boolean }) {
  const text = textOf(walk.state.value, field);
  const answer = answerIn(walk.state.value, field);
  const { unit: _, ...bare } = field;
  return (
    <FieldInput
      field={unitBeside ? bare : field}
      text={text}
      problem={answer.ok ? undefined : answer.why}
      onText={(typed) => void walk.happen({ type: 'typed', key: field.name, text: typed })}
    />
  );
}

/** A choice as the phone's own list: short, where eight answers would push the sum off the screen. */
function Picked({ walk, field }: { walk: Walk; field: Field }) {
  return (
    <label class="field">
      <span class="title">{field.title}</span>
      <select
        name={field.name}
        value={textOf(walk.state.value, field)}
        onChange={(event) => void walk.happen({ type: 'typed', key: field.name, text: event.currentTarget.value })}
      >
        {field.options?.map(({ value, label: words }) => (
          <option value={value}>{words}</option>
        ))}
      </select>
    </label>
  );
}
