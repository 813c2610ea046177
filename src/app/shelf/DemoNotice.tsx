import { useSignal } from '@preact/signals';
import { shelf } from '../../records/shelf';
import { removeDemo } from './openDemo';

/** Says that things of the demo stand among the rest, and takes them away in one tap. */
export function DemoNotice() {
  const busy = useSignal(false);
  const shown = [...shelf.records.value.values()].some((record) => record.demo);
  if (!shown) return null;
  const remove = async () => {
    busy.value = true;
    await removeDemo();
    busy.value = false;
  };
  return (
    <div class="demo-notice" role="note">
      <span>
        <b>Demo:</b> a made-up workshop.
      </span>
      <button class="second" disabled={busy.value} onClick={() => void remove()}>
        Remove the demo
      </button>
    </div>
  );
}
