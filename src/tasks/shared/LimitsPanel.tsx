import { useEffect } from 'preact/hooks';
import type { Finding } from '../../core/limits/finding';
import { cautions, NO_CERTIFICATE } from '../../tables/cautions';
import { adultSource, drinkers } from '../../tables/drinkers';
import { carriers } from '../../tables/limitsCarriers';
import { ALCOHOL_ONLY_IN_PART } from '../../tables/limitsUs';
import { formatPlain } from '../../ui/format';
import { loadCatalogue } from '../../workshop/catalogue';
import { traitWords } from '../../workshop/drinkable/limitRules';
import type { Judgement } from '../../workshop/drinkable/judging';
import type { Walk } from '../engine/task';
import { FindingLine } from './FindingLine';
import { GoOn } from './GoOn';
import { HighestDose } from './HighestDose';
import { judgeFields, traitKey } from './judgeRun';
import { LevelsPart, ListsPart, SharedPart } from './MaterialParts';
import { Folded, type, Typed } from './panelParts';
import { Verdict } from './Verdict';
import './limits.css';

const STANDING = ['never neat', 'flammable', 'eyes and gloves', 'children'];

/** What the rules say at a glance, then the figures behind it, folded. */
export function LimitsPanel({ walk, judgement }: { walk: Walk; judgement: Judgement | null }) {
  useEffect(() => void loadCatalogue(), []);
  return (
    <div class="limits">
      {judgement && <Verdict judgement={judgement} />}
      {judgement && <GoOn walk={walk} judgement={judgement} />}
      {judgement && <HighestDose judgement={judgement} />}
      <Market walk={walk} />
      {judgement && <Traits walk={walk} judgement={judgement} />}
      {judgement && <Details walk={walk} judgement={judgement} />}
      <p class="no-certificate">{NO_CERTIFICATE}</p>
    </div>
  );
}

function Market({ walk }: { walk: Walk }) {
  const { jurisdiction } = judgeFields;
  const chosen = walk.state.value.typed[jurisdiction.name] ?? jurisdiction.preset;
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
      {chosen === 'US' && <p class="quiet">{ALCOHOL_ONLY_IN_PART}</p>}
    </>
  );
}

function Traits({ walk, judgement: { traits, has, because } }: { walk: Walk; judgement: Judgement }) {
  if (traits.length === 0) return null;
  const by = traits.flatMap((trait) => (has.includes(trait) ? (because.get(trait) ?? []) : []));
  return (
    <section>
      <h3>This drink is</h3>
      <div class="traits">
        {traits.map((trait) => {
          const on = has.includes(trait);
          return (
            <button aria-pressed={on} onClick={() => type(walk, traitKey(trait), on ? 'no' : 'yes')}>
              {on ? '✓ ' : ''}
              {traitWords[trait]}
            </button>
          );
        })}
      </div>
      {by.length > 0 && <p class="quiet">Preset by what is in it: {[...new Set(by)].join(', ')}.</p>}
    </section>
  );
}

function Details({ walk, judgement }: { walk: Walk; judgement: Judgement }) {
  const { findings } = judgement;
  const of = (check: Finding['check']) => findings.filter((one) => one.check === check);
  const limits = of('limit');
  return (
    <div class="parts">
      <Folded title="May it be added?" findings={of('added')}>
        <ListsPart judgement={judgement} bans={of('added')} />
      </Folded>
      <Lines title="Limits of this kind of drink" findings={limits.filter((one) => !isCarried(one))} />
      <Lines title="Carriers" findings={limits.filter(isCarried)} />
      <Lines title="Intake in a day" findings={of('intake')} />
      <Lines title="Threshold of concern" findings={of('concern')} />
      <Folded title="Who drinks it, and how much">
        <div class="pair">
          <Typed walk={walk} field={judgeFields.portion} />
          <Typed walk={walk} field={judgeFields.body} />
        </div>
        <DrinkerSources />
      </Folded>
      <SharedPart judgement={judgement} />
      <LevelsPart judgement={judgement} />
      <Certificate walk={walk} judgement={judgement} />
      <Folded title="Always">
        <ul class="plain">
          {cautions
            .filter(({ code }) => STANDING.includes(code))
            .map(({ words }) => (
              <li>{words}.</li>
            ))}
        </ul>
      </Folded>
    </div>
  );
}

/** True for what is limited as a carrier. */
function isCarried({ figure, from }: Finding): boolean {
  const numbers = from.flatMap(({ cas }) => cas);
  return figure !== null && carriers.some(({ cas }) => numbers.includes(cas));
}

function Lines({ title, findings }: { title: string; findings: readonly Finding[] }) {
  if (findings.length === 0) return null;
  return (
    <Folded title={title} findings={findings}>
      <ul class="findings">
        {findings.map((one) => (
          <FindingLine finding={one} />
        ))}
      </ul>
    </Folded>
  );
}

function DrinkerSources() {
  return (
    <ul class="plain">
      <li>Adult: {adultSource}.</li>
      {drinkers.map(({ who, source }) => (
        <li>
          {who}: {source}.
        </li>
      ))}
    </ul>
  );
}

function Certificate({ walk, judgement: { counted } }: { walk: Walk; judgement: Judgement }) {
  if (counted.length === 0) return null;
  return (
    <Folded title="What the oils bring, by certificate">
      <p class="quiet">Empty: the highest published content is counted.</p>
      {counted.map(({ id, name, constituent }) => (
        <Typed
          walk={walk}
          field={{
            ...judgeFields.certificate(id, constituent),
            title: `${constituent.name} in ${name}`,
            help: `counted: ${formatPlain(constituent.share * 100, 3)} % (${constituent.from})`,
          }}
        />
      ))}
    </Folded>
  );
}
