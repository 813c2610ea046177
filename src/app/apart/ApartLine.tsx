import { shelf } from '../../records/shelf';
import { isApart } from '../../records/union/apart';
import { go } from '../nav/route';
import '../settings/keeping.css';

/** On the Bench: that something was given differently on two devices, and the way to choose. */
export function ApartLine() {
  const count = [...shelf.records.value.values()].filter((record) => record.apart && isApart(record)).length;
  if (count === 0) return null;
  return (
    <div class="keeping-line" role="status">
      <span>{count === 1 ? '1 thing is' : `${count} things are`} different on your devices.</span>
      <button class="second" onClick={() => go(['apart'])}>
        Choose
      </button>
    </div>
  );
}
