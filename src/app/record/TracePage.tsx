import { kindWords, type AnyRecord } from '../../records/kind/kinds';
import { ancestors, descendants, sharingLots, type Relative } from '../../records/lineage';
import { describe } from '../describe/describe';
import { Entry } from '../describe/Entry';
import { LineagePicture } from './LineagePicture';
import './trace.css';

/** Back to the lots, forward to the drinks, and what else came from the same lots; as a picture and in words. */
export function TracePage({ record }: { record: AnyRecord }) {
  const before = ancestors(record.id);
  const after = descendants(record.id);
  const sharing = sharingLots(record.id);
  const { title } = describe(record);
  return (
    <main class="page trace">
      <header class="top">
        <h1>Trace · {title}</h1>
        <button class="round" onClick={() => history.back()} aria-label="Close">
          ✕
        </button>
      </header>
      <LineagePicture record={record} before={before} after={after} />
      <Lineage title="Made from" relatives={before} empty="Nothing on this phone: this is where it begins." />
      <Lineage title="Went into" relatives={after} empty="Nothing yet." />
      {sharing.map(({ bottle, others }) => (
        <section>
          <h2>
            Also from {describe(bottle).title}, {bottle.lot ? `lot ${bottle.lot}` : 'lot not written down'}
          </h2>
          <ul class="list">
            {others.map((other) => (
              <Kin record={other} steps={1} />
            ))}
          </ul>
        </section>
      ))}
    </main>
  );
}

function Lineage({ title, relatives, empty }: { title: string; relatives: readonly Relative[]; empty: string }) {
  return (
    <section>
      <h2>{title}</h2>
      {relatives.length === 0 && <p class="quiet">{empty}</p>}
      <ul class="list">
        {relatives.map(({ record, steps }) => (
          <Kin record={record} steps={steps} />
        ))}
      </ul>
    </section>
  );
}

function Kin({ record, steps }: { record: AnyRecord; steps: number }) {
  return (
    <Entry
      record={record}
      indent={Math.min(steps - 1, 4)}
      line={({ line }) => `${kindWords(record)}: ${line}${record.archived ? ' · archived' : ''}`}
    />
  );
}
