import type { Restoring, Way } from '../../records/backup/backup';
import { FieldInput } from '../../ui/controls/FieldInput';
import { formatCount, formatMoment } from '../../ui/format';
import { photosAndSize } from '../photo/photoWords';

interface Props {
  plan: Restoring;
  onWay: (way: Way) => void;
  onRestore: () => void;
  onLeave: () => void;
}

const ways = [
  { value: 'merge', label: 'Add to what is here', hint: 'all that was changed here or there is in it afterwards' },
  {
    value: 'replace',
    label: 'Instead of what is here',
    hint: 'what is here and not in the file goes; another device that has it brings it back when the two exchange',
  },
];

/** What a restore would do, before it does it. */
export function RestorePreview({ plan, onWay, onRestore, onLeave }: Props) {
  const { way, gone, changes } = plan;
  const nothing = changes.length === 0 && gone === 0;
  return (
    <div class="restore">
      <p>{headWords(plan)}</p>
      <FieldInput
        field={{ name: 'way', title: 'How', input: 'choice', options: ways }}
        text={way}
        problem={undefined}
        onText={(text) => onWay(text as Way)}
      />
      <dl class="facts">
        {rows(plan).map(([words, count]) => (
          <div>
            <dt>{words}</dt>
            <dd>{formatCount(count)}</dd>
          </div>
        ))}
      </dl>
      {gone > 0 && (
        <p class="trouble">
          {gone === 1
            ? '1 record that is here now would be erased.'
            : `${formatCount(gone)} records that are here now would be erased.`}
        </p>
      )}
      <Told plan={plan} />
      <div class="row">
        <button class="second" onClick={onLeave}>
          Leave it
        </button>
        <button class="main" disabled={nothing} onClick={onRestore}>
          {nothing ? 'Nothing to do' : 'Restore'}
        </button>
      </div>
    </div>
  );
}

function headWords({ made, photos }: Restoring): string {
  const backup = Number.isNaN(Date.parse(made)) ? 'A backup' : `A backup of ${formatMoment(made)}`;
  return photos.count === 0 ? `${backup}.` : `${backup}, with ${photosAndSize(photos)}.`;
}

function rows(plan: Restoring): (readonly [string, number])[] {
  const all = [
    ['New', plan.fresh],
    ['Newer in the backup', plan.changed],
    ['Newer here, stays', plan.older],
    ['The same', plan.same],
    ['Changed on both sides, joined', plan.both],
    ['Erased on one side, and so on both', plan.erased],
    ['Steps of runs', plan.steps],
    ['Of a newer Minim or not readable, kept as they are', plan.untouched],
    ['Cannot be restored', plan.outCount],
  ] as const;
  return all.filter(([, count], i) => count > 0 || i === 0);
}

/** What a person may want to look at before and after. */
function Told({ plan }: { plan: Restoring }) {
  return (
    <>
      <Names words="Different on the two sides; both are kept, and you choose afterwards" names={plan.conflicts} />
      <Names words="Smell only on one side, so smell only from now on" names={plan.stricter} />
      <LeftOut plan={plan} />
    </>
  );
}

function Names({ words, names }: { words: string; names: readonly string[] }) {
  if (names.length === 0) return null;
  return (
    <>
      <p>{words}:</p>
      <ul class="told">
        {names.map((name) => (
          <li>
            <bdi>{name}</bdi>
          </li>
        ))}
      </ul>
    </>
  );
}

function LeftOut({ plan }: { plan: Restoring }) {
  if (plan.outCount === 0) return null;
  return (
    <details>
      <summary>What stays out, and why</summary>
      <ul class="told">
        {plan.out.map(({ what, why }) => (
          <li>
            <bdi>{what}</bdi>: {why}
          </li>
        ))}
      </ul>
    </details>
  );
}
