import { casProblem, tidyCas } from '../../core/limits/cas';
import type { RecordOf } from '../../records/kind/kinds';
import { list } from '../../records/shelf';
import { cautionCodes } from '../../workshop/cautionWords';
import { choice, code, words, type Field } from '../../tasks/engine/fields';
import { ingredientFields } from '../../tasks/shared/ingredientFields';
import { thresholdFields } from './editableThresholds';
import {
  cited,
  density,
  densityWithin,
  editable,
  lines,
  note,
  oneOf,
  purity,
  put,
  say,
  separate,
  type Editable,
  type Typed,
} from './editing';

type Material = RecordOf<'material'>;

/** What can be changed of a material: all that the catalogue can know of one. */
export function materialFields(record: Material, typed: Typed): Editable<Material>[] {
  const taken = list('material').flatMap((other) => (other.id === record.id ? [] : other.code));
  return [
    say(record, 'name', 'Name', false),
    editable(code({ name: 'code', title: 'Short code', taken }), record.code, (old, typed) => ({
      ...old,
      code: typed,
    })),
    casNumber(record.cas ?? ''),
    note(record, 'fema', 'FEMA number'),
    note(record, 'botanical', 'Plant, in Latin'),
    note(record, 'part', 'Part of the plant'),
    oneOf(record, 'sort', 'It is', ['substance', 'natural']),
    preparation(record),
    family(record),
    oneOf(record, 'form', 'At 20 °C it is', ['liquid', 'viscous', 'solid']),
    density(record, 'density'),
    densityWithin(record, 'density'),
    purity(record, 'purity'),
    cited(record, 'melts', { title: 'Melts at', unit: '°C', min: -273 }),
    cited(record, 'boils', { title: 'Boils at', unit: '°C', min: -273 }),
    cited(record, 'flash', { title: 'Flash point', unit: '°C', min: -273 }),
    cited(record, 'water', { title: 'Dissolves in water', unit: 'mg/L', min: 0 }),
    lines(record, 'also', 'Other names'),
    lines(record, 'smells', 'Smells of'),
    cautions(record),
    ...notes(record, typed),
    ...thresholdFields(record, typed),
  ];
}

function casNumber(text: string): Editable<Material> {
  const field = words({ name: 'cas', title: 'CAS number', optional: true });
  const read: Field<string>['read'] = (typed) => {
    const why = typed.trim() === '' ? null : casProblem(typed);
    return why === null ? { ok: true, value: typed.trim() && tidyCas(typed) } : { ok: false, why };
  };
  return editable({ ...field, read }, text, (old, cas) => put(old, 'cas', cas || null));
}

/** What makes it an ingredient of its own; an aroma material says nothing here. */
function preparation(record: Material): Editable<Material> {
  const { options = [], title } = ingredientFields.preparation;
  const field = choice({ name: 'preparation', title, options });
  return editable(field, record.preparation ?? '', (old, typed) => {
    const chosen = PREPARATIONS.find((one) => one === typed);
    return put<Material, NonNullable<Material['preparation']>>(old, 'preparation', chosen ?? null);
  });
}

const PREPARATIONS = ['extract', 'tincture', 'infusion', 'juice', 'puree'] as const;

/** Families by which a last day of use is said. */
const KEEPING = ['citrus oil', 'oil', 'slow oil', 'aldehyde', 'sulfur'];

/** Its class, or its kind of oil: these words say how long bottles and dilutions of it keep. */
function family(record: Material): Editable<Material> {
  const help = `Minim knows how long these keep: ${KEEPING.join(', ')}.`;
  const field = words({ name: 'family', title: 'Class, or kind of oil', optional: true, max: 40, help });
  return editable(field, record.family ?? '', (old, typed) => put(old, 'family', typed.toLowerCase() || null));
}

function cautions(record: Material): Editable<Material> {
  const help = `Any of: ${cautionCodes.join(', ')}.`;
  const field = words({ name: 'cautions', title: 'Cautions', optional: true, help });
  const read: Field<string[]>['read'] = (typed) => {
    const codes = separate(typed.toLowerCase());
    const strange = codes.find((one) => !cautionCodes.includes(one) && !record.cautions.includes(one));
    return strange === undefined ? { ok: true, value: codes } : { ok: false, why: `“${strange}” is none of them.` };
  };
  return editable({ ...field, read }, record.cautions.join(', '), (old, codes) => ({ ...old, cautions: codes }));
}

/** One line for each note, and one for another. */
function notes(record: Material, typed: Typed): Editable<Material>[] {
  const now = [...(record.notes ?? []), ''];
  const name = (i: number) => `notes.${i}`;
  const all = now.map((text, i) => (typed[name(i)] ?? text).trim()).filter(Boolean);
  return now.map((text, i) => {
    const field = words({ name: name(i), title: text ? 'Note' : 'Note of your own', optional: true, max: 2000 });
    return editable(field, text, (old) => put<Material, string[]>(old, 'notes', all.length > 0 ? all : null));
  });
}
