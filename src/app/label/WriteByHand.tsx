import { labelOf } from '../describe/labelOf';
import { labelTagOf, type Labelled } from '../../workshop/thing/labelled';
import { labelSetUp, setUpLabel } from './labelSetUp';
import { noteLabelled, noteUnlabelled } from './unlabelled';

/** Where there is no printer: what to write on each with a marker, ticked off one by one and kept so. */
export function WriteByHand({ records }: { records: readonly Labelled[] }) {
  const written = (labelSetUp()['written'] ?? '').split(',');
  const here = records.filter(({ id }) => written.includes(id)).map(({ id }) => id);
  const flip = async (id: string) => {
    const off = here.includes(id);
    await setUpLabel('written', (off ? here.filter((one) => one !== id) : [...here, id]).join(','));
    await (off ? noteUnlabelled([id]) : noteLabelled([id]));
  };
  return (
    <section class="by-hand">
      <h2 class="say">Write this on {records.length > 1 ? 'them' : 'it'}</h2>
      <ul class="list">
        {records.map((record) => (
          <li>
            <label class={here.includes(record.id) ? 'choice chosen' : 'choice'}>
              <input type="checkbox" checked={here.includes(record.id)} onChange={() => void flip(record.id)} />
              <Written record={record} />
            </label>
          </li>
        ))}
      </ul>
      <p class="quiet" role="status">
        {here.length} of {records.length} written
      </p>
    </section>
  );
}

/** Code and strength, the grade where it matters, the day, and how many rings around it. */
function Written({ record }: { record: Labelled }) {
  const { paragraphs, rings, flame } = labelOf(record, 'vial').content;
  const spans = paragraphs.flat();
  const day = spans.find(({ what }) => what === 'the day it was made')?.text;
  const more = [
    day,
    rings > 0 && (rings === 1 ? '1 ring around it' : `${rings} rings around it`),
    flame && 'flammable',
  ];
  return (
    <span>
      <b class="tag">{labelTagOf(record)}</b>
      {spans
        .filter(({ face }) => face === 'badge')
        .map(({ text }) => (
          <b class="bar-words">{text}</b>
        ))}
      <small>{more.filter(Boolean).join(', ')}</small>
    </span>
  );
}
