import { typedText } from '../../core/number/typed';
import type { Solvent } from '../../records/kind/solvent';
import { optionalAmount } from '../../tasks/engine/fields';
import { casNumber } from '../../tasks/shared/bottleFields';
import { density, editable, number, put, say, type Editable } from './editing';

/** What can be changed of a solvent of the person's own; whoever kept it before its alcohol was asked can say it here. */
export function solventFields(record: Solvent): readonly Editable<Solvent>[] {
  return [say(record, 'name', 'Name', false), alcohol(record), cas(record), ownDensity(record), flash(record)];
}

function alcohol(record: Solvent): Editable<Solvent> {
  const help = '0: no alcohol in it. Empty: not known, and so not known of any drink it goes into.';
  const field = optionalAmount({ name: 'abv', title: 'Alcohol', unit: '% vol', min: 0, max: 100, help });
  const text = record.abv === undefined ? '' : typedText(Number((record.abv * 100).toPrecision(6)));
  return editable(field, text, (old, percent) => put(old, 'abv', percent === null ? null : percent / 100));
}

function cas(record: Solvent): Editable<Solvent> {
  return editable(casNumber('cas'), record.cas ?? '', (old, text) => put(old, 'cas', text || null));
}

/** A solvent always has a density: what is taken out stays as it was. */
function ownDensity(record: Solvent): Editable<Solvent> {
  const asked = density<Partial<Solvent>>(record, 'density');
  return {
    field: asked.field,
    text: asked.text,
    change: (old, typed) => {
      const answer = asked.change(old, typed);
      return answer.ok ? { ok: true, value: { ...old, density: answer.value.density ?? old.density } } : answer;
    },
  };
}

function flash(record: Solvent): Editable<Solvent> {
  return number(record, 'flashC', { title: 'Flash point', unit: '°C', min: -60 });
}
