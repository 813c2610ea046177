import type { Finding } from '../../core/limits/finding';
import { find } from '../../records/shelf';
import { BESIDE_LIMIT, formatKnown, formatPlain } from '../../ui/format';
import type { Judgement } from '../../workshop/drinkable/judging';
import { listedAs } from '../../workshop/positiveLists';
import { formerMaximum, likedLevels } from '../../workshop/usualLevels';
import { FindingLine } from './FindingLine';
import { Folded } from './panelParts';

/** What may not be added, then where each material is named. */
export function ListsPart({ judgement, bans }: { judgement: Judgement; bans: readonly Finding[] }) {
  const listed = listedAs(judgement.materials, judgement.jurisdiction);
  return (
    <>
      {bans.length > 0 && (
        <ul class="findings">
          {bans.map((one) => (
            <FindingLine finding={one} />
          ))}
        </ul>
      )}
      <ul class="rows">
        {listed.map(({ name, words, named }) => (
          <li>
            <b>{name}</b>
            <span class={named ? '' : 'open'}>{named ? words : `? ${words}`}</span>
          </li>
        ))}
      </ul>
      <p class="quiet">
        By the catalogue, second hand. The Union list is closed for flavouring substances; absence from FEMA or 21 CFR
        is no ban.
      </p>
    </>
  );
}

/** Substances that several materials bring, each with its sum and its parts. */
export function SharedPart({ judgement: { shared } }: { judgement: Judgement }) {
  if (shared.length === 0) return null;
  return (
    <Folded title="The same from several">
      <ul class="rows">
        {shared.map(({ name, total, from }) => (
          <li>
            <b>
              {name} {formatKnown(total, BESIDE_LIMIT)} mg/kg
            </b>
            <span>
              {from
                .map(
                  ({ material, asSuch, mgPerKg }) => `${asSuch ? 'neat' : material} ${formatPlain(mgPerKg.value, 3)}`,
                )
                .join(' + ')}
            </span>
          </li>
        ))}
      </ul>
      <p class="quiet">What an oil brings is counted at its highest published content, or by its certificate.</p>
    </Folded>
  );
}

/** What is dosed of each material, beside what was liked and what a former rule allowed. */
export function LevelsPart({ judgement: { materials } }: { judgement: Judgement }) {
  const dosed = materials.filter(({ carrier, id }) => !carrier && find('material', id));
  if (dosed.length === 0) return null;
  return (
    <Folded title="Dosed, and usual">
      <ul class="rows">
        {dosed.map(({ id, name, cas, mgPerKg }) => {
          const [liked, former] = [likedLevels([id]), formerMaximum(cas[0])];
          const usual = [
            liked && `you liked ${formatPlain(liked.low, 2)}–${formatPlain(liked.high, 2)}`,
            former && `once allowed: ${formatPlain(former.mgPerKg, 3)} (${former.source})`,
          ].filter(Boolean);
          return (
            <li>
              <b>
                {name} {formatKnown(mgPerKg, BESIDE_LIMIT)} mg/kg
              </b>
              <span>{usual.length > 0 ? usual.join(' · ') : 'no level of use was found'}</span>
            </li>
          );
        })}
      </ul>
    </Folded>
  );
}
