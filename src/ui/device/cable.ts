import { signal } from '@preact/signals';
import { lineCame } from './typingScale';

/** The Web Serial API of WICG as far as it is used. */
interface Port {
  open(how: { baudRate: number }): Promise<void>;
  readonly readable: ReadableStream<Uint8Array> | null;
}
interface Serial {
  requestPort(): Promise<Port>;
}
declare global {
  interface Navigator {
    readonly serial?: Serial;
  }
}

const BAUD = 9600; // 8 bits, no parity, one stop bit: how most scales are set when they come

/** Whether a scale is connected by a cable. */
export const cable = signal<'none' | 'connected' | 'lost'>('none');

/** Asks the person for the cable, and hands on each line that comes through it. Rejects when none was chosen, or it does not open. */
export async function connectCable(): Promise<void> {
  const port = await navigator.serial!.requestPort();
  await port.open({ baudRate: BAUD });
  cable.value = 'connected';
  void readLines(port).finally(() => (cable.value = 'lost'));
}

async function readLines({ readable }: Port): Promise<void> {
  const [reader, decoder] = [readable!.getReader(), new TextDecoder()];
  let rest = '';
  for (;;) {
    const { value, done } = await reader.read();
    if (done) return;
    const lines = (rest + decoder.decode(value, { stream: true })).split(/[\r\n]+/);
    rest = lines.pop()!;
    for (const line of lines) if (line.trim() !== '') lineCame(line);
  }
}
