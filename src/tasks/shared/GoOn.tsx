import { isOver } from '../../core/limits/finding';
import type { Judgement } from '../../workshop/drinkable/judging';
import { FieldInput } from '../../ui/controls/FieldInput';
import type { Walk } from '../engine/task';
import { although, REASONS } from './goingOn';
import { type } from './panelParts';

/** Over a limit: why someone goes on, tapped or typed. Nothing where the drink is over none. */
export function GoOn({ walk, judgement }: { walk: Walk; judgement: Judgement }) {
  if (!judgement.findings.some(isOver)) return null;
  const reason = walk.state.value.typed[although.name] ?? '';
  return (
    <section class="go-on">
      <FieldInput
        field={although}
        text={reason}
        problem={undefined}
        onText={(text) => type(walk, although.name, text)}
      />
      <div class="reasons">
        {REASONS.map((words) => (
          <button aria-pressed={reason === words} onClick={() => type(walk, although.name, words)}>
            {reason === words ? '✓ ' : ''}
            {words}
          </button>
        ))}
      </div>
    </section>
  );
}
