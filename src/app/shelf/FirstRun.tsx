import { useSignal } from '@preact/signals';
import { openDemo } from './openDemo';
import { startTask } from '../nav/startTask';
import { ScanButton } from '../describe/LabelLinks';
import './shelf.css';

/** An empty Shelf that explains itself. */
export function FirstRun() {
  const state = useSignal<'ready' | 'busy' | 'failed'>('ready');
  const demo = async () => {
    state.value = 'busy';
    state.value = (await openDemo()) ? 'ready' : 'failed';
  };
  return (
    <main class="page first-run">
      <header class="top">
        <h1>Shelf</h1>
        <ScanButton />
      </header>
      <p class="say">Your bottles, vials and droppers will appear here.</p>
      <ol>
        <li>Add a bottle: three letters of its name are enough.</li>
        <li>Dilute it on the Bench; the vial comes onto the Shelf with its true strength.</li>
        <li>All that is made of it stays traced to its lot. Nothing leaves this phone.</li>
      </ol>
      <div class="foot">
        {state.value === 'failed' && (
          <p class="trouble" role="alert">
            The demo could not be opened. Nothing of it was kept.
          </p>
        )}
        <button class="second" disabled={state.value === 'busy'} onClick={() => void demo()}>
          {state.value === 'busy' ? 'Setting up the demo…' : 'Look around a made-up workshop'}
        </button>
        <button class="main" onClick={() => void startTask({ task: 'bottle', typed: {} })}>
          Add your first bottle
        </button>
      </div>
    </main>
  );
}
