import { codeTextFor, describedBy, readCode, sdpOf, tagOfOffer } from '../../../core/pairing/description';
import { Refusal } from '../../../core/text/refusal';
import { wireOver, type Wire } from './wire';

/** One end of a connection that is being made. */
export interface Peer {
  /** What the other device scans. */
  readonly code: string;
  /** Resolves when the two have found each other; rejects with a Refusal when they do not. */
  readonly wire: Promise<Wire>;
  /** Gives up, or ends what was made. */
  close(): void;
}

/** The end whose code is shown first. */
export interface Offering extends Peer {
  /** Takes the code of the other device. */
  accept(code: string): Promise<void>;
}

const NO_LONGER = 3000; // ms for the addresses of this device; our choice, they take some tens
const FINDS = 30_000; // ms for the two to find each other; our choice, longer than a browser's own tries
const SILENT = 8000; // ms without a sign of the other; our choice: a phone that was looked away from is back by then

/** Whether this browser can connect two devices. */
export function canPair(): boolean {
  return 'RTCPeerConnection' in window;
}

/** Begins: no server is asked, only the addresses of this device go into its code. */
export async function offering(): Promise<Offering> {
  const { connection, opened, close } = begin();
  await connection.setLocalDescription(await connection.createOffer());
  const code = codeTextFor(describedBy(await gathered(connection), 'offer'));
  const found = waiting(connection, opened);
  return {
    code,
    wire: found.wire,
    close,
    async accept(text) {
      const answer = readCode(text);
      if (answer.type !== 'answer')
        throw new Refusal(
          'Both devices show their first code. On one of them, choose “Scan the other’s code” instead.',
        );
      if (answer.answers !== tagOfOffer(code))
        throw new Refusal('This code answers an older one. Let the other device scan the code shown here.');
      await connection.setRemoteDescription({ type: 'answer', sdp: sdpOf(answer) });
      found.begins();
    },
  };
}

/** Answers a code that was scanned. */
export async function answering(text: string): Promise<Peer> {
  const offer = readCode(text);
  if (offer.type !== 'offer')
    throw new Refusal('That code is an answer. On the other device, choose “Show a code” first.');
  const { connection, opened, close } = begin();
  await connection.setRemoteDescription({ type: 'offer', sdp: sdpOf(offer) });
  await connection.setLocalDescription(await connection.createAnswer());
  const code = codeTextFor(describedBy(await gathered(connection), 'answer', tagOfOffer(text)));
  return { code, wire: waiting(connection, opened).wire, close };
}

/** Both ends make the channel by themselves, under one number. */
function begin() {
  const connection = new RTCPeerConnection({ iceServers: [] });
  const channel = connection.createDataChannel('minim', { negotiated: true, id: 0, ordered: true });
  const wire = wireOver(channel);
  const opened = new Promise<Wire>((resolve) => channel.addEventListener('open', () => resolve(wire)));
  const close = () => {
    wire.close();
    connection.close();
  };
  let silent = 0;
  connection.addEventListener('connectionstatechange', () => {
    clearTimeout(silent);
    if (connection.connectionState === 'failed') close();
    if (connection.connectionState === 'disconnected') silent = window.setTimeout(close, SILENT);
  });
  return { connection, opened, close };
}

/** The description with the addresses of this device, as soon as they are known. */
function gathered(connection: RTCPeerConnection): Promise<string> {
  return new Promise((resolve) => {
    const done = () => resolve(connection.localDescription?.sdp ?? '');
    setTimeout(done, NO_LONGER);
    if (connection.iceGatheringState === 'complete') done();
    connection.addEventListener('icegatheringstatechange', () => {
      if (connection.iceGatheringState === 'complete') done();
    });
  });
}

/** The wire, once it is open. The time for finding each other runs from when both have the other's code. */
function waiting(connection: RTCPeerConnection, opened: Promise<Wire>) {
  let fail: (why: Refusal) => void;
  const failed = new Promise<never>((_, reject) => (fail = reject));
  const lost = () =>
    fail(
      new Refusal(
        'The two devices did not find each other. Both must be in the same network. Many guest networks keep devices apart, and a browser may have been refused the local network.',
      ),
    );
  connection.addEventListener('connectionstatechange', () => {
    if (connection.connectionState === 'failed') lost();
  });
  const wire = Promise.race([opened, failed]);
  wire.catch(() => {}); // told to whoever waits for it
  return { wire, begins: () => void setTimeout(lost, FINDS) };
}
