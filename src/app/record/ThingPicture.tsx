import { isOf, type AnyRecord, type RecordOf } from '../../records/kind/kinds';
import { tipOf } from '../../tasks/layer/tips';
import { Boundary } from '../../ui/fault/Boundary';
import * as icons from '../../ui/drawn/firstIcons';
import { Icon } from '../../ui/drawn/Icon';
import { Bottle } from '../../ui/drawn/Vial';
import { Strip } from '../../ui/drawn/Strip';
import { Glass, Jug } from '../../ui/drawn/Ware';
import { tagOfId } from '../../workshop/thing/labelled';
import { isPictured, levelOf, Pictured } from '../describe/Pictured';
import '../../tasks/layer/layer.css';

const TALL = 176; // px: a label is read at arm's length
const STRIP = 132;
const STRIPS = 5; // drawn; the words name all

/** What a thing looks like; the words beside it say the same. */
export function ThingPicture({ record }: { record: AnyRecord }) {
  return (
    <div class="thing-picture" aria-hidden="true">
      <Boundary of={record} otherwise={() => null /* the words beside it tell what broke it */}>
        <Drawn record={record} />
      </Boundary>
    </div>
  );
}

function Drawn({ record }: { record: AnyRecord }) {
  if (isPictured(record)) return <Pictured record={record} size={TALL} />;
  if (isOf('tasting', record)) return <Glass level={0.8} size={STRIP} />;
  if (isOf('batch', record)) return <Jug level={0.8} size={STRIP} />;
  if (isOf('supply', record) && record.sort === 'solvent')
    return <Bottle level={levelOf(record)} tag={null} size={STRIP} />;
  if (isOf('layering', record)) return <Strips layering={record} />;
  return (
    <span class="medal">
      <Icon of={iconOf(record)} />
    </span>
  );
}

/** The icon of what is not drawn: that of the task it comes from. */
function iconOf({ kind }: AnyRecord): string {
  if (kind === 'dropper' || kind === 'calibration') return icons.calibrate;
  if (kind === 'formula') return icons.count;
  if (kind === 'test') return icons.blind;
  if (kind === 'proportions') return icons.layer;
  if (kind === 'run') return icons.book;
  return kind === 'material' ? icons.dilute : icons.shelf;
}

/** The strips of a layering, side by side. */
function Strips({ layering: { strips } }: { layering: RecordOf<'layering'> }) {
  return (
    <span class="strips">
      {strips.slice(0, STRIPS).map(({ vial, code, family }) => (
        <Strip tag={tagOfId(vial) ?? code} tip={family ? tipOf(family) : null} wet={0} size={STRIP} />
      ))}
    </span>
  );
}
