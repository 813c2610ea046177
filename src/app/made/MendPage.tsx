import { CORRECTED, type Corrected, type Mending } from '../../core/drink/mending';
import { measured, type Measured } from '../../core/number/measured';
import { isOf, type AnyRecord } from '../../records/kind/kinds';
import type { Batch } from '../../records/kind/batch';
import { keep, newId } from '../../records/shelf';
import { amount, choice, type Field } from '../../tasks/engine/fields';
import { formatPlain, formatTyped, measuredText } from '../../ui/format';
import { attempt, Refused } from '../../workshop/attempt';
import { refusalOfId } from '../../workshop/drinkable/grade';
import {
  inDrink,
  isLess,
  leftConcentrate,
  measuredOff,
  mendedWith,
  mendingFor,
  type AddedNow,
} from '../../workshop/made/mend';
import { phMending } from '../../workshop/made/mendPh';
import { solventBottleOptions, solventBottles, solventsOnHand } from '../../workshop/onHand';
import { FormPage } from '../nav/FormPage';
import { addedLine, addsOf, followWords, isOfPhAlone, phLine } from './mendWords';
import { useAnswers, type Answers } from './useAnswers';

const heldField = choice({
  name: 'held',
  title: 'Bring to plan',
  preset: 'off',
  options: [
    { value: 'off', label: 'Only what was off', hint: 'everything else gets weaker' },
    { value: 'all', label: 'Everything', hint: 'sugar, alcohol, acid and flavour' },
  ],
});
const lessField = choice({
  name: 'less',
  title: 'There is less than was weighed in',
  preset: 'water',
  options: [
    { value: 'water', label: 'Water is missing', hint: 'it was weighed short, or boiled away' },
    { value: 'taken', label: 'Some was taken out or spilled', hint: 'what is left is the same drink' },
  ],
});
const spiritField = amount({
  name: 'spirit',
  title: 'Strength of the spirit',
  unit: '% ABV',
  above: 0,
  max: 100,
  preset: '96',
});
const stepField = amount({
  name: 'step',
  title: 'Readability of the scale',
  unit: 'g',
  above: 0,
  max: 100,
  preset: '1',
});

const foodField = choice({
  name: 'spirit.food',
  title: 'Is it drinking alcohol?',
  options: [
    { value: 'yes', label: 'Yes, the bottle says so' },
    { value: 'no', label: 'No, or not known', hint: 'then it never goes into a drink' },
  ],
});

/** What brings a batch that was measured to its plan, and what was really added. */
export function MendPage({ record }: { record: AnyRecord }) {
  return isOf('batch', record) ? <Mend batch={record} /> : null;
}

function Mend({ batch }: { batch: Batch }) {
  const answers = useAnswers();
  const held = answers.value(heldField) === 'all' ? inDrink(batch) : offOf(batch);
  const spirit = answers.value(spiritField) ?? 96;
  const isWaterMissing = isLess(batch) && answers.value(lessField) === 'water';
  const found = attempt(() => mendingFor(batch, { held, spirit, isWaterMissing }));
  const ph = phMending(batch);
  const isPhAlone = isOfPhAlone(batch, ph) && answers.value(heldField) !== 'all';
  const rest = found instanceof Refused || isPhAlone ? [] : addsOf(batch, found).filter(({ id }) => canAdd(batch, id));
  const adds = [...rest.filter(({ id }) => id !== ph?.id), ...(ph ? [{ ...ph, mass: ph.massG }] : [])];
  const fields = adds.map(({ id, name, mass }) => massField(id, name, mass));
  const isSpirit = adds.some(({ id }) => id === 'spirit');
  async function store(): Promise<boolean> {
    if (!answers.check(...fields, stepField, ...(isSpirit ? [foodField] : [])) || fields.length === 0) return false;
    const bottle = isSpirit ? answers.value(bottleField()) : null;
    if (isSpirit && whyNot(answers, bottle)) return false;
    const added = adds.map((one, i) => weighedIn(one, fields[i]!, answers)).filter(({ massG }) => massG.value > 0);
    await keep([mendedWith(batch, added, spirit, bottle === null || bottle === 'none' ? undefined : bottle)]);
    return true;
  }
  return (
    <FormPage title="Correct it" onKeep={store}>
      {isLess(batch) && answers.input(lessField)}
      {answers.input(heldField)}
      {ph && (
        <p role="status">
          <b>{phLine(ph)}</b> Stir, and measure again.
        </p>
      )}
      {!isPhAlone && found instanceof Refused && <Bad why={found.problem} />}
      {!isPhAlone && !(found instanceof Refused) && <Answer batch={batch} mending={found} held={held} />}
      {isSpirit && <Spirit answers={answers} />}
      {fields.length > 0 && <h2>What is really added</h2>}
      {fields.map((field) => answers.input(field))}
      {fields.length > 0 && answers.input(stepField)}
    </FormPage>
  );
}

/** What is asked of the spirit. */
function Spirit({ answers }: { answers: Answers }) {
  const bottle = bottleField();
  return (
    <>
      {[spiritField, bottle, foodField].map((field) => answers.input(field))}
      <Bad why={whyNot(answers, answers.value(bottle))} />
    </>
  );
}

/** What was measured off; where nothing but the volume was, the sugar stands for the whole. */
function offOf(batch: Batch): Corrected[] {
  const off = measuredOff(batch);
  return off.length > 0 ? off : ['sugar'];
}

/** The amounts, what that makes, and what follows from leaving the rest alone. */
function Answer({ batch, mending, held }: { batch: Batch; mending: Mending; held: readonly Corrected[] }) {
  const follow = followWords(batch, mending, held, CORRECTED);
  const needsFlavour = (mending.adds.concentrate?.value ?? 0) > 1e-9 && !leftConcentrate(batch);
  return (
    <>
      <p role="status">
        <b>{addedLine(batch, mending, held)}</b>
      </p>
      <p>That makes {measuredText(kilograms(mending.mass), 'kg')} of drink. The ± is that of what was measured.</p>
      {follow.length > 0 && <p>{follow.join('; ')}.</p>}
      {needsFlavour && (
        <p class="trouble">
          None of its concentrate was kept: make {formatPlain(mending.adds.concentrate!.value, 3)} g more of it first,
          or leave the flavour under plan.
        </p>
      )}
      <p class="quiet">Add it in two goes: most of it, stir, measure again, then the rest.</p>
    </>
  );
}

function kilograms(mass: Measured): Measured {
  return { value: mass.value / 1000, sources: mass.sources.map((one) => ({ ...one, u: one.u / 1000 })) };
}

/** Concentrate can be added only from what was kept of it. */
function canAdd(batch: Batch, id: AddedNow['id']): boolean {
  return id !== 'concentrate' || leftConcentrate(batch) !== undefined;
}

function massField(id: AddedNow['id'], name: string, mass: Measured): Field<number> {
  return amount({
    name: `mass.${id}`,
    title: `Added: ${name}`,
    unit: 'g',
    min: 0,
    max: 1_000_000,
    preset: formatTyped(mass.value, 4),
    scale: stepField,
  });
}

function weighedIn(
  { id, mass }: { id: AddedNow['id']; mass: Measured },
  field: Field<number>,
  answers: Answers,
): AddedNow {
  const grams = answers.value(field) ?? 0;
  const u = (answers.value(stepField) ?? 1) / Math.sqrt(6); // tare and reading: two steps (GUM F.2.2.1)
  return {
    id,
    plannedG: mass.value,
    massG: measured(grams, u, { id: `scale:${newId()}`, words: 'weighing in the correction' }),
  };
}

/** Bottles of spirit on the Shelf, and one that is not there. */
function bottleField() {
  const spirits = new Set(
    solventsOnHand().flatMap(({ id, abv }) => (id.startsWith('ethanol') || (abv ?? 0) > 0 ? [id] : [])),
  );
  const bottles = solventBottles().filter(({ solvent }) => solvent !== undefined && spirits.has(solvent));
  const options = solventBottleOptions().filter(({ value }) => bottles.some(({ id }) => id === value));
  return choice<string>({
    name: 'bottle',
    title: 'From',
    preset: bottles.find(({ id }) => refusalOfId(id) === null)?.id ?? 'none',
    options: [...options, { value: 'none', label: 'A bottle that is not on the Shelf', hint: 'drinking alcohol only' }],
  });
}

/** Why that spirit may not go in; null where it may, or nothing was said yet. */
function whyNot(answers: Answers, bottle: string | null): string | null {
  if (answers.value(foodField) === 'no') return 'What is not drinking alcohol never goes into a drink.';
  return bottle && bottle !== 'none' ? refusalOfId(bottle) : null;
}

function Bad({ why }: { why: string | null }) {
  return why ? (
    <p class="trouble" role="alert">
      {why}
    </p>
  ) : null;
}
