import { useSignal, type Signal } from '@preact/signals';
import { drinkMakeOf } from '../../core/drink/drinkMake';
import { drinkDensity } from '../../core/drink/finishedDrink';
import { sharesOf } from '../../core/drink/formula';
import { massFraction, volumeFraction } from '../../core/number/units';
import type { Formula } from '../../records/kind/formula';
import { find } from '../../records/shelf';
import { amount, type Field } from '../../tasks/engine/fields';
import { besides, costOf, usedLines, versionsOf, type FormulaUse, type UsedLine } from '../../workshop/formulaBook';
import { outcome } from '../../workshop/attempt';
import { doseBefore, madeBefore, type DoseBefore, type MadeBefore } from '../../workshop/madeBefore';
import { FieldInput } from '../../ui/controls/FieldInput';
import { formatPlain, formatShare, formatTyped } from '../../ui/format';
import { go } from '../nav/route';
import { startTask } from '../nav/startTask';
import { NotHere } from '../unread/NotHere';
import { PageHead } from '../nav/PageHead';
import { OdourActivities } from './OdourActivities';
import '../sheet/batchSheet.css';

const asked = {
  dose: amount({ name: 'dose', title: 'In the drink', unit: 'mg/kg', above: 0, max: 100_000 }),
  dosage: amount({ name: 'dosage', title: 'Concentrate', unit: 'g/L', above: 0, max: 1000 }),
  litres: amount({ name: 'litres', title: 'Drink', unit: 'L', above: 0, max: 100_000 }),
  glass: amount({ name: 'glass', title: 'Glass', unit: 'mL', above: 0, max: 10_000 }),
  brix: amount({ name: 'brix', title: 'Sugar', unit: '°Brix', min: 0, max: 70 }),
  abv: amount({ name: 'abv', title: 'Alcohol', unit: '% ABV', min: 0, max: 70 }),
};
type Asked = Record<keyof typeof asked, string>;

/** All that follows from a formula: its versions, its lines in drink and concentrate, drops, bottles and cost. */
export function FormulaPage({ id }: { id: string }) {
  const formula = find('formula', id);
  if (!formula) return <NotHere id={id} />;
  const problem = problemOf(formula);
  if (!problem) return <Sound key={id} formula={formula} />;
  return (
    <main class="page sheet">
      <PageHead title={formula.name} />
      <p class="trouble" role="alert">
        {problem}
      </p>
    </main>
  );
}

/** Why a formula says nothing, as one from a file may; null of one that does. */
function problemOf({ lines }: Formula): string | null {
  return outcome(() => sharesOf(lines)).problem;
}

function Sound({ formula }: { formula: Formula }) {
  const before = madeBefore(formula.root);
  const typed = useSignal<Asked>(asBefore(formula, before));
  const use = useOf(typed.value);
  const lines = use ? usedLines(formula, use) : [];
  return (
    <main class="page sheet">
      <PageHead title={formula.name} />
      <Versions formula={formula} />
      <div class="pair">
        {(Object.keys(asked) as (keyof Asked)[]).map((key) => (
          <Ask key={key} field={asked[key]} at={key} typed={typed} />
        ))}
      </div>
      <p class="quiet">{drinkWords(formula, before, use)}</p>
      {!use && <Shares formula={formula} />}
      {use && <Lines lines={lines} use={use} />}
      {use && <OdourActivities lines={lines} />}
      {use && <Cost formula={formula} use={use} />}
      <Ways id={formula.id} typed={typed.value} />
    </main>
  );
}

/** What can be done with the formula. */
function Ways({ id, typed }: { id: string; typed: Asked }) {
  return (
    <footer class="actions">
      <button class="second" onClick={() => startTask({ task: 'formula', typed: { from: id, of: id } })}>
        Change it: a new version
      </button>
      <button class="second" onClick={() => startTask({ task: 'count', typed: { formula: id } })}>
        Count drops
      </button>
      <button class="main" onClick={() => startTask({ task: 'batch', typed: { what: id, ...doseTyped(typed) } })}>
        Make a batch
      </button>
    </footer>
  );
}

/** What stands in the fields at first: the last drink of the formula, and said so; of no other drink. */
function asBefore(formula: Formula, before: MadeBefore | null): Asked {
  const dose = before ? formatTyped(doseBefore(formula.lines, before).mgPerKg, 3) : '';
  const [brix, abv] = before ? [before.brix, before.abv] : [10, 0];
  return { dose, dosage: '1', litres: '20', glass: '100', brix: formatTyped(brix, 3), abv: formatTyped(abv, 3) };
}

/** What drink the numbers are for, and where they come from. */
function drinkWords({ lines }: Formula, before: MadeBefore | null, use: FormulaUse | null): string {
  const density = use ? ` The drink has ${formatPlain(use.densityGPerMl, 4)} g/mL at 20 °C.` : '';
  if (!before) return `No drink of it was made yet: type a dose. 10 °Brix without alcohol is usual.${density}`;
  const version = before.version == null ? '' : `, version ${before.version}`;
  const dose = doseWords[doseBefore(lines, before).how].words;
  return `${dose} (${formatPlain(before.mgPerKg, 3)} mg/kg); sugar and alcohol as in ${before.name}${version}.${density}`;
}

const doseWords: Readonly<Record<DoseBefore['how'], { words: string }>> = {
  'as made': { words: 'Dose as it was made' },
  'holds the others': { words: 'Dose so that what stayed keeps its mg/kg as it was made' },
  'other proportions': { words: 'Dose of the whole as it was made, in other proportions' },
};

/** The dose for a batch; nothing while none is typed, so that the batch asks. */
function doseTyped({ dose }: Asked): { dose?: string } {
  return dose === '' ? {} : { dose };
}

function useOf(typed: Asked): FormulaUse | null {
  const read = (key: keyof Asked) => {
    const answer = asked[key].read(typed[key]);
    return answer.ok ? answer.value : null;
  };
  const [mgPerKg, gramsPerL, litres, glassMl] = [read('dose'), read('dosage'), read('litres'), read('glass')];
  const [brix, abv] = [read('brix'), read('abv')];
  if (mgPerKg === null || gramsPerL === null || litres === null || glassMl === null) return null;
  const densityGPerMl = brix === null || abv === null ? null : densityOf(brix, abv);
  if (densityGPerMl === null) return null;
  return { mgPerKg, gramsPerL, litres, glassMl, densityGPerMl };
}

/** g/mL of a drink at 20 °C; null where there is no such drink. */
function densityOf(brix: number, abv: number): number | null {
  return outcome(() => drinkDensity(drinkMakeOf(massFraction(brix / 100), volumeFraction(abv / 100)))).value ?? null;
}

function Ask({ field, at, typed }: { field: Field; at: keyof Asked; typed: Signal<Asked> }) {
  const text = typed.value[at];
  const answer = field.read(text);
  return (
    <FieldInput
      field={field}
      text={text}
      problem={answer.ok || text === '' ? undefined : answer.why}
      onText={(now) => (typed.value = { ...typed.value, [at]: now })}
    />
  );
}

/** The versions, and what this one changed. */
function Versions({ formula }: { formula: Formula }) {
  const all = versionsOf(formula);
  const before = all[all.findIndex(({ id }) => id === formula.id) - 1];
  if (all.length < 2) return null;
  return (
    <section>
      <div class="chips">
        {all.map(({ id, version }) => (
          <button aria-current={id === formula.id ? 'page' : undefined} onClick={() => go(['formula', id], 'replace')}>
            version {version}
          </button>
        ))}
      </div>
      {formula.notes && <p>{formula.notes}</p>}
      {before && !problemOf(before) && (
        <table>
          <thead>
            <tr>
              <th scope="col">Changed</th>
              <th scope="col">version {before.version}</th>
              <th scope="col">version {formula.version}</th>
            </tr>
          </thead>
          <tbody>
            {besides(before, formula).map((line) => (
              <tr>
                <th scope="row">{line.name}</th>
                <td>{line.before}</td>
                <td>{line.after}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </section>
  );
}

/** What the formula is, while no dose is typed. */
function Shares({ formula }: { formula: Formula }) {
  return (
    <table class="facts-table">
      <tbody>
        {sharesOf(formula.lines).map(({ id, share }) => (
          <Fact title={formula.lines.find(({ material }) => material === id)!.name} text={formatShare(share)} />
        ))}
      </tbody>
    </table>
  );
}

function Lines({ lines, use }: { lines: readonly UsedLine[]; use: FormulaUse }) {
  return (
    <>
      {lines.map((line) => (
        <section>
          <h2>
            {line.name} · {formatPlain(line.share * 100, 3)} %
          </h2>
          <table class="facts-table">
            <tbody>
              <Fact title="In the drink" text={`${formatPlain(line.mgPerKg, 3)} mg/kg`} />
              <Fact title="Of the concentrate" text={`${formatPlain(line.inConcentrate * 100, 3)} % w/w`} />
              <Fact title={`For ${formatPlain(use.litres)} L`} text={`${formatPlain(line.grams, 3)} g`} />
              <Fact
                title={`For ${formatPlain(use.glassMl)} mL`}
                text={line.drops.join(', ') || 'no vial fit for drinks'}
              />
              <Fact title="Bottles" text={line.bottles.join('; ')} />
            </tbody>
          </table>
        </section>
      ))}
      {lines.reduce((sum, { inConcentrate }) => sum + inConcentrate, 0) > 1 && (
        <p class="trouble">The neat formula alone is more than that concentrate: take more g/L.</p>
      )}
    </>
  );
}

function Fact({ title, text }: { title: string; text: string }) {
  return (
    <tr>
      <th scope="row">{title}</th>
      <td>{text}</td>
    </tr>
  );
}

function Cost({ formula, use }: { formula: Formula; use: FormulaUse }) {
  const { cost, unpriced } = costOf(formula, use);
  if (unpriced.length === formula.lines.length) return <p class="quiet">No bottle of it has a price.</p>;
  return (
    <p>
      A litre of drink takes {formatPlain(cost, 3)} worth of it, in the money of your prices.
      {unpriced.length > 0 && ` Without a price, and not in it: ${unpriced.join(', ')}.`}
    </p>
  );
}
