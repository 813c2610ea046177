import type { Finding } from '../../core/limits/finding';
import { isConfirmed } from '../../core/limits/figure';
import type { Ceiling } from '../../core/limits/highestDose';
import { cautions, NO_CERTIFICATE } from '../../tables/cautions';
import { ALCOHOL_ONLY_IN_PART } from '../../tables/limitsUs';
import { FieldInput } from '../../ui/controls/FieldInput';
import { formatPlain } from '../../ui/format';
import { answerIn, textOf, type Field } from '../engine/fields';
import { FindingLine } from './FindingLine';
import { judgeFields, traitKey, type Judgement } from './judging';
import { traitWords } from '../../workshop/limitRules';
import type { Walk } from '../engine/task';
import './limits.css';

const CHECKS: readonly (readonly [Finding['check'], string])[] = [
  ['added', 'May it be added?'],
  ['limit', 'Limits of this kind of drink'],
  ['intake', 'Intake in a day'],
  ['concern', 'Threshold of concern'],
];

const STANDING = ['never neat', 'flammable', 'eyes and gloves', 'children'];

/** What the rules say, check by check, the highest dose that passes, and the cautions that always stand. */
export function LimitsPanel({ walk, judgement }: { walk: Walk; judgement: Judgement | null }) {
  return (
    <div class="limits">
      <Rules walk={walk} />
      {judgement && <Findings judgement={judgement} />}
      {judgement && <Highest judgement={judgement} />}
      {judgement && <Traits walk={walk} judgement={judgement} />}
      {judgement && <Certificate walk={walk} judgement={judgement} />}
      <section>
        <h3>Always</h3>
        <ul class="plain">
          {cautions
            .filter(({ code }) => STANDING.includes(code))
            .map(({ words }) => (
              <li>{words}.</li>
            ))}
        </ul>
      </section>
      <p class="no-certificate">{NO_CERTIFICATE}</p>
    </div>
  );
}

function Rules({ walk }: { walk: Walk }) {
  const { jurisdiction, portion, body } = judgeFields;
  const chosen = textOf(walk.state.value, jurisdiction);
  return (
    <>
      <div class="switch" role="group" aria-label="Rules of">
        {jurisdiction.options!.map(({ value, label: words }) => (
          <button aria-pressed={value === chosen} onClick={() => type(walk, jurisdiction.name, value)}>
            {value === chosen ? '✓ ' : ''}
            {words} rules
          </button>
        ))}
      </div>
      <div class="pair">
        <Typed walk={walk} field={portion} />
        <Typed walk={walk} field={body} />
      </div>
      {chosen === 'US' && <p class="quiet">{ALCOHOL_ONLY_IN_PART}</p>}
    </>
  );
}

function Findings({ judgement }: { judgement: Judgement }) {
  const { findings, silent } = judgement;
  return (
    <>
      {CHECKS.map(([check, title]) => (
        <section>
          <h3>{title}</h3>
          <ul class="findings">
            {findings
              .filter((one) => one.check === check)
              .map((one) => (
                <FindingLine finding={one} />
              ))}
            {findings.every((one) => one.check !== check) && <li class="none">Nothing found that speaks of it.</li>}
          </ul>
        </section>
      ))}
      {silent.length > 0 && (
        <p class="trouble">
          Nothing can be looked up for {silent.join(', ')}: no CAS number on the Shelf. It may still be limited.
        </p>
      )}
    </>
  );
}

function Highest({ judgement: { ceilings, looks } }: { judgement: Judgement }) {
  const [first, ...rest] = ceilings;
  return (
    <section>
      <h3>The highest dose that passes</h3>
      {first ? (
        <p class="highest">{ceilingText(first)}</p>
      ) : (
        <p class="quiet">No maximum was found for anything in it.</p>
      )}
      <ul class="plain">
        {rest.map((one) => (
          <li>{ceilingText(one)}</li>
        ))}
        {looks.map((one) => (
          <li>
            Above {formatPlain(one.mgPerKg, 3)} mg/kg {one.finding.what} needs a look: nobody set it an intake.
          </li>
        ))}
      </ul>
    </section>
  );
}

function ceilingText({ mgPerKg, times, finding, binding }: Ceiling): string {
  const law = finding.figure && isConfirmed(finding.figure) ? '' : ' Check the law.';
  const by = finding.what === binding ? finding.what : `${finding.what}, through ${binding}`;
  return `${formatPlain(mgPerKg, 3)} mg/kg in all, ${formatPlain(times, 2)} times as now: ${by}.${law}`;
}

function Traits({ walk, judgement }: { walk: Walk; judgement: Judgement }) {
  if (judgement.traits.length === 0) return null;
  return (
    <section>
      <h3>This drink is</h3>
      <div class="traits">
        {judgement.traits.map((trait) => {
          const on = judgement.has.includes(trait);
          return (
            <button aria-pressed={on} onClick={() => type(walk, traitKey(trait), on ? 'no' : 'yes')}>
              {on ? '✓ ' : ''}
              {traitWords[trait]}
            </button>
          );
        })}
      </div>
    </section>
  );
}

function Certificate({ walk, judgement }: { walk: Walk; judgement: Judgement }) {
  if (judgement.counted.length === 0) return null;
  return (
    <details>
      <summary>What the oils bring, by certificate</summary>
      <p class="quiet">Empty: the highest published content is counted.</p>
      {judgement.counted.map(({ id, name, constituent }) => (
        <Typed
          walk={walk}
          field={{
            ...judgeFields.certificate(id, constituent),
            title: `${constituent.name} in ${name}`,
            help: `counted: ${formatPlain(constituent.share * 100, 3)} % (${constituent.from})`,
          }}
        />
      ))}
    </details>
  );
}

function type(walk: Walk, key: string, text: string): void {
  void walk.happen({ type: 'typed', key, text });
}

function Typed({ walk, field }: { walk: Walk; field: Field }) {
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
