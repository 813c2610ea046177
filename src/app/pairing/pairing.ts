import { signal } from '@preact/signals';
import { Refusal } from '../../core/text/refusal';
import { exchange, type Outcome, type Progress } from '../../records/pairing/exchange';
import { thisSide } from '../../records/pairing/here';
import { answering, offering, type Offering, type Peer } from '../../ui/device/link/peer';
import { keepAwake } from '../../ui/device/wakeLock';
import { refusalWords } from '../../ui/sentence';
import { nameThisDevice } from '../keeping/deviceSort';

type State =
  | { at: 'choose'; wrong?: string }
  | { at: 'starting' }
  /** The first code is shown; then that of the other is scanned. */
  | { at: 'shows'; code: string; scanning: boolean; wrong?: string }
  | { at: 'scans'; wrong?: string }
  /** The answer is shown until the other device has scanned it. */
  | { at: 'answers'; code: string }
  | { at: 'finding' }
  | { at: 'working'; progress: Progress; stop: AbortController }
  | { at: 'ended'; outcome: Outcome };

/** Outlives the page, so that an exchange goes on while the person looks elsewhere. */
export const pairing = signal<State>({ at: 'choose' });
let peer: Peer | null = null;

/** Ends what was begun, and leaves the choice. */
export function leavePairing(): void {
  peer?.close();
  peer = null;
  pairing.value = { at: 'choose' };
}

/** Begins with a code. The camera is opened first: some phones tell their address only while it is in use. */
export async function showCode(): Promise<void> {
  pairing.value = { at: 'starting' };
  const camera = await navigator.mediaDevices?.getUserMedia({ video: true }).catch(() => null);
  try {
    const offer = await offering();
    if (pairing.value.at !== 'starting') return offer.close();
    peer = offer;
    pairing.value = { at: 'shows', code: offer.code, scanning: false };
    follow(offer);
  } catch (error) {
    pairing.value = { at: 'choose', wrong: said(error) };
  } finally {
    camera?.getTracks().forEach((track) => track.stop());
  }
}

/** Scans the code that the other device shows first. */
export function scanFirst(): void {
  pairing.value = { at: 'scans' };
}

/** Scans the answer of the other device, or goes back to showing the code. */
export function scanAnswer(scanning: boolean): void {
  const now = pairing.value;
  if (now.at === 'shows') pairing.value = { at: 'shows', code: now.code, scanning };
}

/** A code was read or pasted: the camera is still open when the answer is made. */
export async function takeCode(text: string): Promise<void> {
  const now = pairing.value;
  try {
    if (now.at === 'shows') {
      await (peer as Offering).accept(text);
      pairing.value = { at: 'finding' };
    } else if (now.at === 'scans') {
      const answer = await answering(text);
      if (pairing.value.at !== 'scans') return answer.close();
      peer = answer;
      pairing.value = { at: 'answers', code: answer.code };
      follow(answer);
    }
  } catch (error) {
    if (pairing.value.at === now.at) pairing.value = { ...now, wrong: said(error) } as State;
  }
}

/** Exchanges as soon as the two have found each other. */
function follow(made: Peer): void {
  made.wire.then(
    async (wire) => {
      if (peer !== made) return;
      const stop = new AbortController();
      const progress = (now: Progress) => (pairing.value = { at: 'working', progress: now, stop });
      progress({ other: '', came: 0, toCome: 0, went: 0, toGo: 0 });
      const sleep = keepAwake();
      await nameThisDevice();
      const outcome = await exchange({ wire, side: await thisSide(), progress, stop: stop.signal }).finally(sleep);
      if (peer === made) pairing.value = { at: 'ended', outcome };
      setTimeout(() => made.close(), LAST_WORD);
    },
    (error: unknown) => {
      if (peer === made) pairing.value = { at: 'choose', wrong: said(error) };
      made.close();
    },
  );
}

const LAST_WORD = 1000; // ms for what was said last to arrive (our choice)

/** What is wrong, in one sentence. */
export function said(error: unknown): string {
  return error instanceof Refusal ? refusalWords(error) : error instanceof Error ? error.message : String(error);
}
