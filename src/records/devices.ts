import { find, keep, list, newRecord } from './shelf';
import { deviceHere } from './store/device';
import { partsOf } from './union/dots';

/** What a device is called; null of one that has no name here. */
export function deviceName(id: string | null | undefined): string | null {
  return find('device', id)?.name ?? null;
}

/**
 * The name of the device that a write was made on, where more than one is known here; null where no one need be told, and of writes
 * of the time before devices had names.
 */
export function writtenOn(dot: string | undefined): string | null {
  return list('device').length > 1 ? deviceName(dot === undefined ? null : partsOf(dot)?.device) : null;
}

/** Gives this device a name. */
export async function nameHere(name: string): Promise<void> {
  const id = await deviceHere();
  const before = find('device', id);
  await keep([before ? { ...before, name } : newRecord('device', { id, name })]);
}

/** Sees to it that this device has a name before anything leaves it: what it is, with a number where another one is called so. */
export async function named(sort: string): Promise<void> {
  if (deviceName(await deviceHere()) !== null) return;
  const taken = new Set(list('device').map(({ name }) => name));
  const free = Array.from({ length: taken.size + 1 }, (_, i) => (i === 0 ? sort : `${sort} ${i + 1}`));
  await nameHere(free.find((name) => !taken.has(name))!);
}
