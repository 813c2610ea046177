import { canPair } from '../../ui/device/link/peer';
import { PageHead } from '../nav/PageHead';
import { DevicePart } from '../settings/DevicePart';
import { Ended, Working } from './Exchanging';
import { FilePart } from './FilePart';
import { FolderPart } from './FolderPart';
import { canShareFolder } from './sharedFolder';
import { leavePairing, pairing, scanAnswer, scanFirst, showCode } from './pairing';
import { ScanCode } from './ScanCode';
import { ShownCode } from './ShownCode';
import './pairing.css';

/** Two devices that hold the same: by a direct connection, a folder that both reach, or a file: #/devices. */
export function DevicesPage() {
  const now = pairing.value;
  if (now.at === 'scans') return <ScanCode title="Scan the other’s code" wrong={now.wrong} onClose={leavePairing} />;
  if (now.at === 'shows' && now.scanning)
    return <ScanCode title="Scan its answer" wrong={now.wrong} onClose={() => scanAnswer(false)} />;
  return (
    <main class="page keeping devices">
      <PageHead title="Two devices" />
      {now.at === 'choose' && <Ways wrong={now.wrong} />}
      {now.at === 'starting' && <p role="status">One moment…</p>}
      {now.at === 'shows' && <ShownCode code={now.code} first />}
      {now.at === 'answers' && <ShownCode code={now.code} first={false} />}
      {now.at === 'finding' && <Finding />}
      {now.at === 'working' && <Working progress={now.progress} stop={now.stop} />}
      {now.at === 'ended' && <Ended outcome={now.outcome} />}
    </main>
  );
}

function Finding() {
  return (
    <>
      <p role="status">The two devices look for each other…</p>
      <button class="second" onClick={leavePairing}>
        Stop
      </button>
    </>
  );
}

function Ways({ wrong }: { wrong: string | undefined }) {
  return (
    <>
      <p>Both devices end up with the same: each gets what it is missing. Nothing is replaced by something older.</p>
      <DevicePart />
      <section>
        <h2>Direct, by two codes</h2>
        {wrong && (
          <p class="trouble" role="alert">
            {wrong}
          </p>
        )}
        {canPair() ? <Codes /> : <p>This browser cannot connect two devices. Use a file.</p>}
      </section>
      {canShareFolder() && <FolderPart />}
      <FilePart />
    </>
  );
}

function Codes() {
  return (
    <>
      <p>
        Both devices on the same Wi-Fi, with this page open on both. Nothing leaves that network, and no server is
        involved.
      </p>
      <button class="main" onClick={() => void showCode()}>
        Show a code
      </button>
      <button class="second" onClick={scanFirst}>
        Scan the other’s code
      </button>
      <p class="note">One of them shows a code first, the other scans it. Both ask for the camera.</p>
    </>
  );
}
