import type { Measured } from '../../core/number/measured';
import { kindWords, type AnyRecord } from '../../records/kind/kinds';
import { canHold, type Arrow } from '../../records/lineage';
import { sharingLots } from '../../records/recall';
import { describe } from '../describe/describe';
import { Entry } from '../describe/Entry';
import { LineagePicture } from './LineagePicture';
import { gramsText, kinAfter, kinBefore, type Kin } from './relatives';
import { PageHead } from '../nav/PageHead';
import './trace.css';

/** Back to the lots, forward to the drinks, and what else holds the same lots; as a picture and in words, with amounts. */
export function TracePage({ record }: { record: AnyRecord }) {
  const before = kinBefore(record);
  const after = kinAfter(record);
  const stuff = canHold(record);
  const { title } = describe(record);
  return (
    <main class="page trace">
      <PageHead title={`Trace · ${title}`} />
      <LineagePicture record={record} before={before} after={after} />
      <Lineage
        title="In it"
        kin={over('is in it', before)}
        {...(stuff && { empty: 'Nothing that is on this phone.' })}
      />
      <Lineage title="Led to it, and is not in it" kin={over('led to it', before)} />
      <Lineage title="It is in" kin={over('is in it', after)} {...(stuff && { empty: 'Nothing yet.' })} />
      <Lineage title="It led to, and is not in" kin={over('led to it', after)} />
      {sharingLots(record.id).map(({ lot, others }) => (
        <section>
          <h2>
            Also holds {describe(lot).title}, {lot.lot ? `lot ${lot.lot}` : 'lot not written down'}
          </h2>
          <ul class="list">
            {others.map(({ record: other, grams }) => (
              <Row record={other} steps={1} grams={grams} />
            ))}
          </ul>
        </section>
      ))}
      <p class="quiet">Amounts are those of the day it was made, followed from thing to thing by share of mass.</p>
    </main>
  );
}

const over = (arrow: Arrow, kin: readonly Kin[]) => kin.filter((one) => one.arrow === arrow);

/** One list; without `empty` an empty one is left out. */
function Lineage({ title, kin, empty }: { title: string; kin: readonly Kin[]; empty?: string }) {
  if (kin.length === 0 && empty === undefined) return null;
  return (
    <section>
      <h2>{title}</h2>
      {kin.length === 0 && <p class="quiet">{empty}</p>}
      <ul class="list">
        {kin.map(({ record, steps, grams }) => (
          <Row record={record} steps={steps} grams={grams} />
        ))}
      </ul>
    </section>
  );
}

function Row({ record, steps, grams }: { record: AnyRecord; steps: number; grams: Measured | null | undefined }) {
  return (
    <Entry
      record={record}
      indent={Math.min(steps - 1, 4)}
      line={({ line }) => (
        <>
          {`${kindWords(record)}: ${line}${record.archived ? ' · archived' : ''}`}
          {grams !== undefined && <b class="grams">{gramsText(grams)}</b>}
        </>
      )}
    />
  );
}
