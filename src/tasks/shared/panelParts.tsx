import type { ComponentChildren } from 'preact';
import { isOver, worstState, type Finding } from '../../core/limits/finding';
import { FieldInput } from '../../ui/controls/FieldInput';
import { stateWords } from '../../workshop/drinkable/limitRules';
import { answerIn, textOf, type Field } from '../engine/fields';
import type { Walk } from '../engine/task';

interface FoldedProps {
  title: string;
  findings?: readonly Finding[];
  children: ComponentChildren;
}

/** A part of the panel under its title, which says how the worst of it is; open only where something is over a limit. */
export function Folded({ title, findings = [], children }: FoldedProps) {
  const state = findings.length > 0 ? stateWords[worstState(findings)] : null;
  return (
    <details open={findings.some(isOver)}>
      <summary>
        {title}
        {state && (
          <small>
            <span aria-hidden="true">{state.sign}</span> {state.words}
          </small>
        )}
      </summary>
      {children}
    </details>
  );
}

/** Types into a field of the run. */
export function type(walk: Walk, key: string, text: string): void {
  void walk.happen({ type: 'typed', key, text });
}

/** A field of the run, as its screen would draw it. */
export function Typed({ walk, field }: { walk: Walk; field: Field }) {
  const text = textOf(walk.state.value, field);
  const answer = answerIn(walk.state.value, field);
  return (
    <FieldInput
      field={field}
      text={text}
      problem={answer.ok ? undefined : answer.why}
      onText={(typed) => type(walk, field.name, typed)}
    />
  );
}
