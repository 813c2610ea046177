import { useEffect } from 'preact/hooks';
import { formatCount, formatMoment } from '../../ui/format';
import { useFault } from '../../ui/fault/useFault';
import { allowFolder, leaveFolder, look, shared, shareFolder, type Shared } from './sharedFolder';

/** A folder that both devices reach: each keeps one file there. */
export function FolderPart() {
  const fault = useFault();
  useEffect(() => void look().catch(fault), []);
  const now = shared.value;
  return (
    <section>
      <h2>A shared folder</h2>
      {now && <Now now={now} />}
      {now && now.state !== 'none' && (
        <button class="second" onClick={() => void leaveFolder().catch(fault)}>
          No longer use that folder
        </button>
      )}
    </section>
  );
}

function Now({ now }: { now: Shared }) {
  const fault = useFault();
  if (now.state === 'none')
    return (
      <>
        <p>
          A folder that is already kept in step between your devices, or one on a drive that you carry. Each device has
          one file there, and reads those of the others; so more than two can work together.
        </p>
        <button class="second" onClick={() => void shareFolder().catch(fault)}>
          Choose the folder
        </button>
      </>
    );
  if (now.state === 'ask')
    return (
      <>
        <p>The browser wants to be asked again for the folder “{now.name}”.</p>
        <button class="main" onClick={() => void allowFolder().catch(fault)}>
          Allow it
        </button>
      </>
    );
  if (now.state === 'failed')
    return (
      <p class="trouble" role="alert">
        The folder “{now.name}” could not be used: {now.why}
      </p>
    );
  return (
    <>
      <p role="status">
        In step with the folder “{now.name}”, {formatMoment(now.at.toISOString())}. {othersWords(now.others)}
      </p>
      <button class="second" onClick={() => void look().catch(fault)}>
        Look into it now
      </button>
    </>
  );
}

function othersWords(others: number): string {
  if (others === 0) return 'No other device has left a file there yet.';
  return others === 1 ? '1 other device has a file there.' : `${formatCount(others)} other devices have files there.`;
}
