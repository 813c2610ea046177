import { find, list } from '../../records/shelf';
import { exact, measured } from '../../core/number/measured';
import { hueOf } from '../../ui/drawn/hue';
import { Bottle } from '../../ui/drawn/Vial';
import { citedText, formatDayOfYear, formatPlain, measuredText } from '../../ui/format';
import { cautionWords } from '../../workshop/cautionWords';
import { today } from '../../workshop/today';
import { answer } from '../engine/answers';
import { chips } from '../engine/card';
import type { Field } from '../engine/fields';
import type { RunState } from '../engine/fold';
import type { CardAnswer, SlotFacts, Step } from '../engine/task';
import { asked, askForm, densityFor, formOf, gramsOf, knownOf, neverFitIn, solventsIn } from './newBottleAsked';
import { bottleFields as fields } from './bottleFields';
import { allergenChips, holdsExtras, holdsProblem, ingredientFields, preparationIn } from './ingredientFields';
import { underSentence } from './underSentence';

const NEAT = 'Neat material: gloves and eye protection, open window, never taste it.';

const SOLVENT = 'This is a solvent. Added as a material it can be diluted, but no vial can be filled with it.';

/** What else may be said of a bottle: in the sentence once it is, with these words before it; until then a chip. */
const extras: readonly (readonly [field: Field, before: string, chip: string])[] = [
  [fields.price, 'for', 'price'],
  [fields.useBy, 'best before', 'best before'],
  [fields.box, 'in box', 'box'],
  [fields.row, 'row', 'row'],
  [fields.density, 'density', 'density'],
  [fields.purity, 'purity at least', 'purity'],
];
const ownExtras: typeof extras = [
  [fields.cas, 'CAS', 'CAS number'],
  [fields.plant, 'of', 'Latin name'],
  [ingredientFields.preparation, 'as', 'extract or juice'],
];

/** A bottle on one card: drawn with its label, and all that its own label says in a sentence. */
export function bottleCard(run: RunState): Step<'new-card'> {
  const { amount, unit, supplier, received, code, box, grade } = asked(run);
  const known = knownOf(run);
  const isNew = !find('material', answer(run, fields.material));
  const formOpen = isNew && !known?.form;
  const holds = preparationIn(run, known) ? holdsExtras : [];
  const more = [...extras, ...(known ? [] : ownExtras), ...holds].map((one) =>
    one[0] === fields.box ? ([box, one[1], one[2]] as const) : one,
  );
  const shown = { more, isNew, formOpen };
  return {
    key: 'new-card',
    say: 'What its label says.',
    ask: [
      fields.name,
      ...(isNew ? [code] : []),
      ...(formOpen ? [askForm(run)] : []),
      amount,
      supplier,
      fields.lot,
      grade,
      received,
      unit,
      ...more.map(([field]) => field),
    ],
    card: {
      sentence: sentenceOf(run, shown, () => true),
      said: `{${fields.name.name}}, ${sentenceOf(run, shown, (field) => !!answer(run, field))}`,
      slots: slotsOf(run, more),
      chips: more.map(([{ name }]) => name).filter((name) => name !== fields.row.name), // it is asked beside its box
      picture: () => picture(run),
      answer: answerOf(run),
    },
    ...(solventsIn(run).length > 0 ? { draw: underSentence(SOLVENT) } : {}),
    told: [['Material', !isNew ? 'on the Shelf already' : known ? 'from the catalogue' : 'of your own']],
    ...gradeNeeds(run, [...cautionWords(known?.cautions ?? []), ...(preparationIn(run, known) ? [] : [NEAT])]),
    done: 'Next',
  };
}

/** What keeps the card from being left while its grade is not said, or cannot be; before it is said, that it can only be smell only. */
function gradeNeeds(run: RunState, cautions: readonly string[]): Pick<Step, 'problem' | 'cautions'> {
  const said = answer(run, fields.grade);
  const holds = holdsProblem(run);
  if (holds) return { problem: holds, cautions };
  const never = said === 'smell only' ? null : neverFitIn(run);
  if (said === null)
    return { problem: 'Say the grade: food grade, or smell only.', cautions: never ? [never, ...cautions] : cautions };
  return never ? { problem: never, cautions } : { cautions };
}

interface Shown {
  more: typeof extras;
  isNew: boolean;
  formOpen: boolean;
}

/** The sentence with the slots that are to be in it; what is empty stands there without the words before it. */
function sentenceOf(run: RunState, { more, isNew, formOpen }: Shown, isIn: (field: Field) => boolean): string {
  const { code, amount, supplier, received } = asked(run);
  const slot = (field: Field, before = '') => (isIn(field) ? [`${before}{${field.name}}`] : []);
  const bought = [...slot(amount), ...slot(supplier, 'from ')].join(' ');
  const parts = [
    ...(isNew ? slot(code) : []),
    ...(formOpen ? slot(fields.form) : []),
    ...(bought ? [bought] : []),
    ...slot(fields.lot, answer(run, fields.lot) ? 'lot ' : ''),
    ...slot(fields.grade),
    ...slot(received, 'received '),
    ...more.filter(([field]) => answer(run, field)).flatMap(([field, before]) => slot(field, `${before} `)),
  ];
  return parts.join(', ').replace(`{${fields.grade.name}}, `, `{${fields.grade.name}} `); // after two buttons there is no comma
}

function slotsOf(run: RunState, more: Shown['more']): Record<string, SlotFacts> {
  const { amount, unit, supplier, received } = asked(run);
  const sizes = answer(run, unit) === 'mL' ? ['5', '10', '15', '30', '50', '100'] : ['1', '5', '10', '25', '50', '100'];
  const before = (texts: readonly (string | undefined)[]) =>
    [...new Set(texts)].flatMap((value) => (value ? [{ value, label: value }] : [])).slice(0, 6);
  const bottles = list('bottle');
  const goods = list('supply');
  return {
    ...Object.fromEntries(more.map(([{ name }, , missing]) => [name, { missing, optional: true as const }])),
    [amount.name]: {
      missing: 'amount',
      optional: true,
      usual: chips(sizes, amount.unit ?? ''),
      beside: [unit],
    },
    [supplier.name]: {
      missing: 'supplier',
      optional: true,
      usual: before([...bottles, ...goods].map((one) => one.supplier)),
    },
    [ingredientFields.allergens.name]: { missing: 'allergens', optional: true, usual: allergenChips(run) },
    [fields.price.name]: { missing: 'price', optional: true, ...shownAs(run, fields.price) },
    [fields.lot.name]: { missing: 'lot', optional: true },
    [fields.grade.name]: { missing: 'grade', pills: true, asks: 'Say the grade' },
    [fields.form.name]: { missing: 'liquid or solid', asks: 'Say if it is solid' },
    [fields.box.name]: {
      missing: 'box',
      optional: true,
      usual: before([...bottles, ...goods].map((one) => one.box)),
      beside: [fields.row],
    },
    [received.name]: {
      missing: 'day',
      optional: true,
      ...(answer(run, received) === today() ? { shows: `today, ${formatDayOfYear(today())}` } : {}),
    },
  };
}

/** A number without its unit, which the words around it say. */
function shownAs(run: RunState, field: Field<number | null>): Pick<SlotFacts, 'shows'> {
  const given = answer(run, field);
  return given === null ? {} : { shows: formatPlain(given, 6) };
}

/** The bottle as it will be on the Shelf. */
function picture(run: RunState) {
  const code = find('material', answer(run, fields.material))?.code ?? answer(run, asked(run).code) ?? '';
  const smellOnly = answer(run, fields.grade) === 'smell only';
  return <Bottle level={1} tag={{ code, strength: 'neat' }} hue={hueOf(code)} smellOnly={smellOnly} size={150} />;
}

/** What it is, what is known of it, and what the amount weighs. */
function answerOf(run: RunState): CardAnswer {
  const known = knownOf(run);
  const { cas, botanical } = { cas: known?.cas, botanical: known?.botanical };
  const form = formOf(run);
  const words = [botanical ?? (cas && `CAS ${cas}`), form === 'viscous' ? 'thick' : form, densityWords(run)];
  return {
    big: answer(run, fields.name) ?? 'What is in it',
    lines: [words.filter(Boolean).join(' · '), ...weighs(run)],
  };
}

function densityWords(run: RunState): string {
  const { gPerMl, halfWidth, typical } = densityFor(run);
  return typical ? '' : citedText(gPerMl, halfWidth, 'g/mL');
}

/** What an amount in mL weighs, by which density. */
function weighs(run: RunState): string[] {
  const { amount, unit } = asked(run);
  const [ml, grams] = [answer(run, amount), gramsOf(run)];
  if (ml === null || grams === null || answer(run, unit) !== 'mL') return [];
  const mass = grams.u > 0 ? measured(grams.g, grams.u, { id: 'density', words: 'density' }) : exact(grams.g);
  const by = densityFor(run).typical ? ', by a typical density' : '';
  return [`${formatPlain(ml)} mL weigh ${measuredText(mass, 'g', { most: 3 })}${by}`];
}
