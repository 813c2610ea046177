import { find, list } from '../../records/shelf';
import { answer } from '../engine/answers';
import type { RunState } from '../engine/fold';
import { formulaOfThen } from './exactly';
import { fields, formulaName, wayOf } from './fields';
import { pickedMaterials, pickedStocks } from './picked';

const MOST = 4; // codes in a name; our choice

/** What a count goes by: its formula, else the codes of what is counted; '' while that is nothing. */
export function calledSo(run: RunState): string {
  return formulaName(run) || (formulaOfThen(run)?.name ?? '') || codes(run);
}

function codes(run: RunState): string {
  const all =
    wayOf(run) === 'materials'
      ? pickedMaterials(run).map(({ code }) => code)
      : pickedStocks(run).map(({ id }) => codeOf(id));
  const own = [...new Set(all)];
  return own.length > MOST ? `${own.slice(0, MOST).join(' + ')} …` : own.join(' + ');
}

function codeOf(id: string): string {
  return find('vial', id)?.code ?? find('material', find('bottle', id)?.material)?.code ?? '?';
}

/** The name of a trial: as it was typed in the first version, else 'Low tide, trial 3', the next that no trial has. */
export function trialName(run: RunState): string {
  const typed = answer(run, fields.name);
  if (typed !== null) return typed;
  const taken = new Set(list('vial').map(({ name }) => name));
  const words = calledSo(run);
  const named = (n: number) => (words ? `${words}, trial ${n}` : `Trial ${n}`);
  for (let n = 1; ; n++) if (!taken.has(named(n))) return named(n);
}
