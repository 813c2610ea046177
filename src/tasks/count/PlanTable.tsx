import type { PlanAnswer, PlanInstance, PlanLine } from '../../core/plan/instance';
import { measured } from '../../core/number/measured';
import { formatKnown, formatPlain } from '../../ui/format';
import './count.css';
import { percent, signedPercent, worstLine } from './plans';
import { stockOf } from './stock';
import { dropsText } from '../../workshop/dropWords';

/** Each line of a plan: what is counted, the neat material that this brings beside what was asked for, and how far apart they are. */
export function PlanTable({ instance, answer }: { instance: PlanInstance; answer: PlanAnswer }) {
  const parts = instance.components.reduce((sum, component) => sum + component.parts, 0);
  const worst = worstLine(answer);
  return (
    <table class="plan-table">
      <thead>
        <tr>
          <th scope="col">Drops</th>
          <th scope="col">Brings, target</th>
          <th scope="col">Off</th>
        </tr>
      </thead>
      {answer.lines.map((line, i) => {
        const { name, parts: own } = instance.components[i]!;
        return <Line line={line} name={name} share={own / parts} answer={answer} worst={line === worst} />;
      })}
    </table>
  );
}

interface LineProps {
  line: PlanLine;
  name: string | undefined;
  answer: PlanAnswer;
  /** Asked for, of all neat material, g/g. */
  share: number;
  worst: boolean;
}

function Line({ line, name, answer, share, worst }: LineProps) {
  const brings = measured(line.trueMg, line.trueMg * line.counting, { id: 'counting', words: 'counting' });
  return (
    <tbody class={worst ? 'worst' : ''}>
      <tr>
        <th scope="rowgroup" colSpan={3}>
          {name} · {percent(share, 3)}
        </th>
      </tr>
      <tr>
        <td>
          {line.stockIds.map((id) => (
            <span class="taken">
              <b>{dropsText(answer.plan[id]!)}</b> <span class="code">{stockOf(id)?.tag ?? '?'}</span>
            </span>
          ))}
        </td>
        <td>
          {formatKnown(brings)} mg
          <small>of {formatPlain(line.wishMg, 3)} mg</small>
        </td>
        <td>
          {signedPercent(line.rounding)}
          <small>by chance {percent(line.counting)}</small>
        </td>
      </tr>
    </tbody>
  );
}
