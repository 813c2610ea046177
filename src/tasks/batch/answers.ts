import { valueOf } from '../engine/fields';
import type { RunState } from '../engine/fold';
import { traitKey } from '../shared/judgeRun';
import { fields } from './fields';
import { sugarField } from './drinkAsked';

/** What the run says itself about the drink: cloudy, carbonated, no added sugar; as typed text. */
export function traitsOf(run: RunState, emulsion: boolean): Record<string, string> {
  const sugar = valueOf(run, sugarField(run));
  return {
    [traitKey('cloudy')]: emulsion ? 'yes' : 'no',
    [traitKey('carbonated')]: (valueOf(run, fields.volumes) ?? 0) > 0 ? 'yes' : 'no',
    [traitKey('no added sugar')]: sugar === 0 ? 'yes' : 'no',
  };
}

/** The run with that filled in; what was typed wins. */
export function answered(run: RunState, emulsion: boolean): RunState {
  return { ...run, typed: { ...traitsOf(run, emulsion), ...run.typed } };
}
