import { useSignal } from '@preact/signals';
import { changeSettings, shelf } from '../../records/shelf';
import { cable, connectCable } from '../../ui/device/cable';
import { startTask } from '../nav/startTask';
import './handsBusy.css';

/** Scales: a new one; one that is connected by a cable, where the browser can; and what was learnt of one that types. */
export function ScalePart() {
  const { lineShapes = [] } = shelf.settings.value;
  return (
    <section class="hands-busy" aria-label="Scale">
      <h2>Scale</h2>
      <p class="quiet">
        A scale that acts as a keyboard needs no setting: where a weight is needed, let it print. On the pad it counts
        nothing.
      </p>
      <button class="second" onClick={() => void startTask({ task: 'scale', typed: {} })}>
        Add a scale
      </button>
      {navigator.serial && <Cable />}
      {lineShapes.length > 0 && (
        <button class="second" onClick={() => void changeSettings({ lineShapes: [] })}>
          Forget the scale that types
        </button>
      )}
    </section>
  );
}

const said = {
  none: '',
  connected: 'Connected: its weights go where one is needed.',
  lost: 'The cable is no longer connected.',
};

function Cable() {
  const trouble = useSignal('');
  const connect = async () => {
    trouble.value = '';
    try {
      await connectCable();
    } catch (error) {
      const isNone = error instanceof DOMException && error.name === 'NotFoundError';
      trouble.value = isNone
        ? 'No cable was chosen.'
        : 'The cable could not be opened: another program may be using it.';
    }
  };
  return (
    <>
      <button class="second" onClick={() => void connect()}>
        Connect a scale by cable
      </button>
      <p class="note" role="status">
        {trouble.value || said[cable.value] || 'Not tried on a real scale yet: check its first weights.'}
      </p>
    </>
  );
}
