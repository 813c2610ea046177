import { isOf, kindWords, type AnyRecord } from '../../records/kind/kinds';
import { descendants } from '../../records/lineage';
import { find, list } from '../../records/shelf';
import { measuredText } from '../../ui/format';
import { Entry } from '../describe/Entry';
import { go } from '../nav/route';
import { runOf } from './HowMade';

const FEW = 4; // our choice; all of them are in its trace

/** What was made with a thing, nearest first. */
export function UsedIn({ record }: { record: AnyRecord }) {
  if (isOf('material', record)) return null; // its bottles are listed with their lots
  const near = descendants(record.id).filter(({ steps, record: one }) => steps === 1 && one.kind !== 'calibration');
  if (near.length === 0) return null;
  return (
    <section>
      <h2>Used in</h2>
      <ul class="list">
        {near.slice(0, FEW).map(({ record: one }) => (
          <Entry key={one.id} record={one} line={({ line }) => `${kindWords(one)}${line && `: ${line}`}`} />
        ))}
      </ul>
      {near.length > FEW && (
        <button class="second all" onClick={() => go(['record', record.id, 'trace'])}>
          All {near.length}, and what came from them
        </button>
      )}
    </section>
  );
}

/** What the same run taught of a dropper. */
export function Learned({ record }: { record: AnyRecord }) {
  const run = runOf(record);
  if (run === null || isOf('calibration', record)) return null;
  const learned = list('calibration').filter(({ from }) => from.at(-1) === run);
  return (
    <>
      {learned.map(({ id, liquid, dropper, mgPerDrop }) => (
        <button class="learned" onClick={() => go(['record', id])}>
          Learned: a drop of {liquid.name} from {find('dropper', dropper)?.name ?? 'a dropper'} is{' '}
          {measuredText(mgPerDrop, 'mg')}
        </button>
      ))}
    </>
  );
}

/** The material of a bottle: what is known of it in general is on a page of its own. */
export function OfMaterial({ record }: { record: AnyRecord }) {
  const material = isOf('bottle', record) ? find('material', record.material) : undefined;
  if (!material) return null;
  return (
    <button class="entry" onClick={() => go(['record', material.id])}>
      <b>About {material.name}</b>
      <span>CAS number, density, thresholds, cautions</span>
    </button>
  );
}
