import { letterScale, pageRoom } from '../../ui/plot/pictureRoom';
import { dropsText } from '../../workshop/dropWords';
import { curveScale, placeWords, type CurveScale } from './curve';
import { nearness, percent, type Plans } from './plans';

/**
 * How far a plan is off at most against its number of drops, as a falling staircase; below the band's edge it is nearer than the vials
 * themselves are known. The sheet of plans says the same in words.
 */
export function PlanCurve({ plans: { all, worth, chosen, proposed, own } }: { plans: Plans }) {
  const scale = curveScale(all, { room: pageRoom(), scale: letterScale() });
  const { x, y, width, height, letters } = scale;
  const steps = all.map(
    ({ drops, objective }, i) => `${i === 0 ? 'M' : 'H'}${x(drops)}${i === 0 ? ' ' : 'V'}${y(objective)}`,
  );
  const drops = dropsText(chosen.drops);
  const words = placeWords([`${drops}, at most ${percent(chosen.objective)} off`, drops], chosen, all, scale);
  const band = Math.max(y(own), 0);
  return (
    <svg
      class="plan-curve"
      viewBox={`0 0 ${width} ${height}`}
      font-size={letters}
      role="img"
      aria-label={`Error against drops: ${worth.map(nearness).join('; ')}. Proposed: ${dropsText(proposed.drops)}.`}
    >
      {own > 0 && band < scale.bottom && (
        <rect class="own" x={scale.left} y={band} width={scale.right - scale.left} height={scale.bottom - band} />
      )}
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
