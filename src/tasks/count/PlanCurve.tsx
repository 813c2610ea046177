import { letterScale, pageRoom } from '../../ui/plot/pictureRoom';
import { dropsText } from '../../workshop/dropWords';
import { curveScale, placeWords, type CurveScale } from './curve';
import { nearness, percent, type Plans } from './plans';

/** Error of the worst line against the number of drops, as a falling staircase; the list beside it says the same in words. */
export function PlanCurve({ plans: { all, worth, chosen } }: { plans: Plans }) {
  const scale = curveScale(all, { room: pageRoom(), scale: letterScale() });
  const { x, y, width, height, letters } = scale;
  const steps = all.map(
    ({ drops, objective }, i) => `${i === 0 ? 'M' : 'H'}${x(drops)}${i === 0 ? ' ' : 'V'}${y(objective)}`,
  );
  const drops = dropsText(chosen.drops);
  const words = placeWords([chosen.recommended ? `${drops}, recommended` : drops, drops], chosen, all, scale);
  return (
    <svg
      class="plan-curve"
      viewBox={`0 0 ${width} ${height}`}
      font-size={letters}
      role="img"
      aria-label={`Error of the worst line against drops: ${worth.map(nearness).join('; ')}.`}
    >
      <Grid scale={scale} />
      <path class="stairs" d={`${steps.join('')}H${scale.right}`} />
      {worth.map((point) => (
        <circle
          class={point === chosen ? 'point chosen' : 'point'}
          cx={x(point.drops)}
          cy={y(point.objective)}
          r={point === chosen ? 7 : 4}
        />
      ))}
      <text class="chosen-label" x={words.x} y={words.y}>
        {words.text}
      </text>
    </svg>
  );
}

/** Lines for round errors, numbers for round drops. */
function Grid({ scale }: { scale: CurveScale }) {
  const { left, right, height, letters } = scale;
  return (
    <>
      {scale.errors.map((error) => (
        <g>
          <line class="grid" x1={left} x2={right} y1={scale.y(error)} y2={scale.y(error)} />
          <text x={left - 6} y={scale.y(error) + letters / 3} text-anchor="end">
            {percent(error)}
          </text>
        </g>
      ))}
      {scale.ticks.map((drops) => (
        <text x={scale.x(drops)} y={height - letters / 2} text-anchor="middle">
          {drops}
        </text>
      ))}
    </>
  );
}
