let channel: MessageChannel | undefined;
const waiting: (() => void)[] = [];

/** Does something soon, but after all that is under way now; it is not held back during a touch, as a timer is. */
export function afterThis(work: () => void): void {
  channel ??= openChannel();
  waiting.push(work);
  channel.port2.postMessage(null);
}

/** One for all: making a channel takes longer than sending on it. */
function openChannel(): MessageChannel {
  const made = new MessageChannel();
  made.port1.onmessage = () => waiting.shift()?.();
  return made;
}
