import { useSignal } from '@preact/signals';
import type { PlanAnswer, PlanComponent, PlanLine } from '../../core/plan/instance';
import { OptionRows } from '../../ui/controls/OptionRows';
import { Sheet } from '../../ui/controls/Sheet';
import { hueOf } from '../../ui/drawn/hue';
import { dropsText } from '../../workshop/dropWords';
import { textOf, type Field } from '../engine/fields';
import type { RunState } from '../engine/fold';
import type { Walk } from '../engine/task';
import { asked, settled } from './asked';
import './count.css';
import { fields } from './fields';
import { percent, plansOf, signedPercent } from './plans';
import { targetLines } from './planInstance';
import { labelledCode, stockOf } from './stock';

/**
 * What a plan counts for each material: the vials with their drops, what they bring of all neat material beside its target, and how far
 * apart these are. A touch on the vial chooses another one.
 */
export function PlanLines({ walk }: { walk: Walk }) {
  const open = useSignal('');
  const run = walk.state.value;
  const fieldOf = (material: string) => asked(run).stocks.find(({ name }) => name === fields.stock(material).name);
  const opened = fieldOf(open.value);
  const rows = rowsOf(settled(run));
  const all = rows.reduce((sum, { component }) => sum + component.parts, 0);
  return (
    <>
      <ul class="plan-lines" aria-label="Materials">
        {rows.map((row) => (
          <Line
            key={row.component.id}
            {...row}
            share={row.component.parts / all}
            onOpen={fieldOf(row.component.id) && (() => (open.value = row.component.id))}
          />
        ))}
      </ul>
      {opened && <StockSheet walk={walk} field={opened} onClose={() => (open.value = '')} />}
    </>
  );
}

/** The materials with what the plan counts of them; alone where there is no plan. */
function rowsOf(run: RunState): Pick<LineProps, 'component' | 'line' | 'answer'>[] {
  const plans = plansOf(run);
  if (!plans.ok)
    return targetLines(run).map(({ material, name, parts }) => ({ component: { id: material, name, parts } }));
  const { instance, chosen } = plans;
  return instance.components.map((component) => ({
    component,
    line: chosen.lines.find(({ componentId }) => componentId === component.id),
    answer: chosen,
  }));
}

/** Vials and bottles of one material; a touch chooses and closes. */
function StockSheet({ walk, field, onClose }: { walk: Walk; field: Field; onClose: () => void }) {
  const choose = async (text: string) => {
    if (await walk.happen({ type: 'typed', key: field.name, text })) onClose();
  };
  return (
    <Sheet title={field.title} onClose={onClose}>
      <OptionRows
        title={field.title}
        options={field.options ?? []}
        chosen={textOf(walk.state.value, field)}
        onChoose={(value) => void choose(value)}
      />
    </Sheet>
  );
}

interface LineProps {
  component: Pick<PlanComponent, 'id' | 'name' | 'parts'>;
  line?: PlanLine | undefined;
  answer?: PlanAnswer;
  /** Of all neat material, g/g. */
  share: number;
  onOpen: (() => void) | undefined;
}

function Line({ component: { id, name }, line, answer, share, onOpen }: LineProps) {
  const ids = line?.stockIds ?? [];
  const words = ids.length === 0 ? 'no vial for it' : '';
  return (
    <li class={line ? 'plan-line' : 'plan-line open'} style={{ '--hue': hueOf(labelledCode(ids[0], id)) }}>
      <button type="button" disabled={!onOpen} aria-haspopup="dialog" onClick={onOpen}>
        {ids.map((stock) => (
          <span class="taken">
            <b class="code">{stockOf(stock)?.tag ?? '?'}</b> <b>{dropsText(answer?.plan[stock] ?? 0)}</b>
          </span>
        ))}
        {words && <span class="taken">{words}</span>}
        <small>{name}</small>
        <span class="unseen">, change</span>
      </button>
      {line && <Share line={line} share={share} />}
    </li>
  );
}

/** What the drops bring of all neat material, as its target is counted, and how far they are off. */
function Share({ line: { trueMg, wishMg, rounding }, share }: { line: PlanLine; share: number }) {
  return (
    <span class="share">
      <span>
        {percent(share * (trueMg / wishMg))}
        <small> of {percent(share)}</small>
      </span>
      <b>{signedPercent(rounding)}</b>
    </span>
  );
}
