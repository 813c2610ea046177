import { broughtBy, ingredientDensity } from '../../core/drink/ingredient';
import { gramPerMl } from '../../core/number/units';
import type { Bottle, Material, MaterialFacts } from '../../records/kind/material';
import { allergens } from '../../tables/allergens';
import { attempt, Refused } from '../../workshop/attempt';
import { answer } from '../engine/answers';
import { choice, optionalAmount, words, type Field } from '../engine/fields';
import type { RunState } from '../engine/fold';
import { bottleFields } from './bottleFields';

type Preparation = NonNullable<Material['preparation']>;

const preparations = choice({
  name: 'new.preparation',
  title: 'What sort it is',
  options: [
    { value: 'extract', label: 'Extract', short: 'extract' },
    { value: 'tincture', label: 'Tincture', short: 'tincture', hint: 'a plant in alcohol' },
    { value: 'infusion', label: 'Infusion', short: 'infusion', hint: 'a plant in water, tea, coffee' },
    { value: 'juice', label: 'Juice', short: 'juice' },
    { value: 'puree', label: 'Puree', short: 'puree' },
  ],
});

/** Which of them it is; null of an aroma material. */
const preparation: Field<Preparation | null> = {
  ...preparations,
  options: [{ value: '', label: 'An aroma material only' }, ...(preparations.options ?? [])],
  read: (text) => (text === '' ? { ok: true, value: null } : preparations.read(text)),
};

/** What is asked of the bottle of an extract, tincture, infusion, juice or puree, beside what every bottle says. */
export const ingredientFields = {
  preparation,
  brix: optionalAmount({
    name: 'new.brix',
    title: 'Sugar of it',
    unit: '°Brix',
    min: 0,
    max: 90,
    help: 'As a refractometer reads it. It misreads beside alcohol: then g of sugar in 100 g, from the sheet.',
  }),
  abv: optionalAmount({ name: 'new.abv', title: 'Alcohol of it', unit: '% vol', min: 0, max: 100 }),
  acid: optionalAmount({
    name: 'new.acid',
    title: 'Acid of it, as citric acid',
    unit: 'g/100 g',
    min: 0,
    max: 60,
    help: 'Titrated, or from the sheet.',
  }),
  solids: optionalAmount({
    name: 'new.solids',
    title: 'Dry matter of it',
    unit: '%',
    min: 0,
    max: 100,
    help: 'What stays when it is dried, sugar and acid with it.',
  }),
  caffeine: optionalAmount({ name: 'new.caffeine', title: 'Caffeine in it', unit: 'mg/kg', min: 0, max: 1e6 }),
  quinine: optionalAmount({ name: 'new.quinine', title: 'Quinine in it', unit: 'mg/kg', min: 0, max: 1e6 }),
  allergens: allergensField('new.allergens'),
};

/** Groups of foods in it that a label names, with commas between them; 'none' where someone looked and found none. */
export function allergensField(name: string): Field<string[] | null> {
  const help = `Any of: ${allergens.map(({ id }) => id).join(', ')}; or none.`;
  const read: Field<string[] | null>['read'] = (text) => {
    const said = text
      .toLowerCase()
      .split(',')
      .map((one) => one.trim())
      .filter(Boolean);
    if (said.length === 0) return { ok: true, value: null };
    const found = said.filter((one) => one !== NONE);
    const strange = found.find((one) => allergens.every(({ id }) => id !== one));
    return strange === undefined
      ? { ok: true, value: [...new Set(found)] }
      : { ok: false, why: `“${strange}” is none of them.` };
  };
  return { ...words({ name, title: 'Allergens in it', optional: true, help }), read };
}

/** Said of what was looked at and holds none of them. */
export const NONE = 'none';

/** What each more than the bottle itself is called in its sentence, and on its chip. */
export const holdsExtras: readonly (readonly [field: Field, before: string, chip: string])[] = [
  [ingredientFields.brix, 'at', '°Brix'],
  [ingredientFields.abv, 'with', '% vol'],
  [ingredientFields.acid, 'acid', 'acid'],
  [ingredientFields.solids, 'dry matter', 'dry matter'],
  [ingredientFields.caffeine, 'caffeine', 'caffeine'],
  [ingredientFields.quinine, 'quinine', 'quinine'],
  [ingredientFields.allergens, 'allergens', 'allergens'],
];

/** What sort of ingredient it is; null of an aroma material. */
export function preparationIn(run: RunState, known: Pick<MaterialFacts, 'preparation'> | null): Preparation | null {
  return known?.preparation ?? (known ? null : answer(run, ingredientFields.preparation));
}

/** What the bottle holds, in the units of its record; undefined where nothing was said. */
export function holdsIn(run: RunState): Bottle['holds'] {
  const { brix, abv, acid, solids } = ingredientFields;
  const said = {
    brix: answer(run, brix),
    abv: perHundred(answer(run, abv)),
    acid: perHundred(answer(run, acid)),
    solids: perHundred(answer(run, solids)),
  };
  const known = Object.entries(said).filter(([, value]) => value !== null);
  return known.length > 0 ? (Object.fromEntries(known) as Bottle['holds']) : undefined;
}

function perHundred(percent: number | null): number | null {
  return percent === null ? null : percent / 100;
}

/** Why what was said of it cannot be, in one sentence; null where it can. */
export function holdsProblem(run: RunState): string | null {
  const density = answer(run, bottleFields.density);
  const found = attempt(() => broughtBy(holdsIn(run) ?? {}, density === null ? undefined : gramPerMl(density)));
  return found instanceof Refused ? found.problem : null;
}

/** Density by what it holds, g/mL: sugar and alcohol; null where that is not known. */
export function densityByHolding(run: RunState): number | null {
  const holds = holdsIn(run);
  const found = holds && attempt(() => ingredientDensity(holds));
  return found === undefined || found instanceof Refused ? null : found;
}

/** What a limit is set for: caffeine and quinine, as a certificate would give them, g/g. */
export function stimulantsIn(run: RunState): NonNullable<Bottle['constituents']> {
  const asked = [
    ['58-08-2', 'caffeine', ingredientFields.caffeine],
    ['130-95-0', 'quinine', ingredientFields.quinine],
  ] as const;
  return asked.flatMap(([cas, name, field]) => {
    const mgPerKg = answer(run, field);
    return mgPerKg === null ? [] : [{ cas, name, share: mgPerKg / 1e6 }]; // mg per kg
  });
}

/** Chips of the allergens: each puts its own to those that are there, or takes it out. */
export function allergenChips(run: RunState): { value: string; label: string }[] {
  const now = answer(run, ingredientFields.allergens) ?? [];
  const all = allergens.map(({ id, words: label }) => {
    const isIn = now.includes(id);
    const next = isIn ? now.filter((one) => one !== id) : [...now, id];
    return { value: next.join(', ') || NONE, label: isIn ? `${label} ✓` : label };
  });
  return [{ value: NONE, label: 'none of them' }, ...all];
}
