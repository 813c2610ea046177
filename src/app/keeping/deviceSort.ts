import { named } from '../../records/devices';

/** What this device is, as a name for it until its owner gives it one. */
export function deviceSort(): string {
  if (!matchMedia('(pointer: coarse)').matches) return 'Computer';
  return Math.min(screen.width, screen.height) < 600 ? 'Phone' : 'Tablet';
}

/** Sees to it that this device has a name before anything leaves it. */
export function nameThisDevice(): Promise<void> {
  return named(deviceSort());
}
