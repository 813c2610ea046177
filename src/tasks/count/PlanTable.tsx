import type { PlanAnswer, PlanInstance, PlanLine } from '../../core/plan/instance';
import { formatPlain } from '../../ui/format';
import './count.css';
import { percent, signedPercent, worstLine } from './plans';
import { stockOf } from './stock';
import { dropsText } from '../../workshop/dropWords';

/** Each line of a plan: what is asked, what is counted, what that brings, and how far off it is. */
export function PlanTable({ instance, answer }: { instance: PlanInstance; answer: PlanAnswer }) {
  const all = answer.lines.reduce((sum, line) => sum + line.trueMg, 0);
  const parts = instance.components.reduce((sum, component) => sum + component.parts, 0);
  const worst = worstLine(answer);
  return (
    <table class="plan-table">
      <thead>
        <tr>
          <th scope="col">Drops</th>
          <th scope="col">Share, wish</th>
          <th scope="col">Off</th>
        </tr>
      </thead>
      {answer.lines.map((line, i) => {
        const { name, parts: own } = instance.components[i]!;
        const shares = { share: line.trueMg / all, target: own / parts };
        return <Line line={line} name={name} answer={answer} {...shares} worst={line === worst} />;
      })}
    </table>
  );
}

interface LineProps {
  line: PlanLine;
  name: string | undefined;
  answer: PlanAnswer;
  /** Of all neat material, g/g. */
  share: number;
  target: number;
  worst: boolean;
}

function Line({ line, name, answer, share, target, worst }: LineProps) {
  return (
    <tbody class={worst ? 'worst' : ''}>
      <tr>
        <th scope="rowgroup" colSpan={3}>
          {name}
        </th>
      </tr>
      <tr>
        <td>
          {line.stockIds.map((id) => (
            <span class="taken">
              <b>{dropsText(answer.plan[id]!)}</b> <span class="code">{stockOf(id)?.tag ?? '?'}</span>
            </span>
          ))}
          <small>{formatPlain(line.trueMg, 3)} mg</small>
        </td>
        <td>
          {percent(share, 3)}
          <small>
            {percent(target, 3)}, {formatPlain(line.wishMg, 3)} mg
          </small>
        </td>
        <td>
          {signedPercent(line.rounding)}
          <small>± {percent(line.counting)}</small>
        </td>
      </tr>
    </tbody>
  );
}
