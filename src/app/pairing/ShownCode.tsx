import { useSignal } from '@preact/signals';
import { darkRuns, squareCodeOf } from '../../ui/label/squareCode';
import { leavePairing, scanAnswer } from './pairing';

const RIM = 4; // modules of white around it (ISO/IEC 18004)

/** The code that the other device scans, as large as there is room. */
export function ShownCode({ code, first }: { code: string; first: boolean }) {
  return (
    <>
      <p role="status">
        {first
          ? 'On the other device choose Settings, Two devices, “Scan the other’s code”, and point its camera at this code.'
          : 'Now let the other device scan this answer.'}
      </p>
      <Code text={code} />
      {first && (
        <button class="main" onClick={() => scanAnswer(true)}>
          Scan its answer
        </button>
      )}
      <div class="row">
        <button class="second" onClick={leavePairing}>
          Stop
        </button>
        <Copy text={code} />
      </div>
    </>
  );
}

/** Black on white whatever the light, so that every camera reads it. */
function Code({ text }: { text: string }) {
  const code = squareCodeOf(text);
  const side = code.side + 2 * RIM;
  return (
    <svg
      class="pair-code"
      viewBox={`0 0 ${side} ${side}`}
      role="img"
      aria-label="The code of this device"
      data-code={text}
    >
      <rect width={side} height={side} fill="#fff" />
      <path
        transform={`translate(${RIM} ${RIM})`}
        d={darkRuns(code)
          .map(({ x, y, length }) => `M${x} ${y}h${length}v1h${-length}z`)
          .join('')}
        shape-rendering="crispEdges"
      />
    </svg>
  );
}

/** For a device without a camera: the same as a text, to be sent by whatever both have. */
function Copy({ text }: { text: string }) {
  const done = useSignal('');
  const copy = () =>
    navigator.clipboard.writeText(text).then(
      () => (done.value = 'Copied'),
      () => (done.value = 'It could not be copied'),
    );
  return (
    <button class="second" onClick={() => void copy()} aria-live="polite">
      {done.value || 'Copy it as text'}
    </button>
  );
}
