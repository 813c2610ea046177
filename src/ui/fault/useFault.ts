import { useSignal } from '@preact/signals';

/** Hands what failed outside of drawing (a promise, an effect) to the boundary around the component. */
export function useFault(): (error: unknown) => void {
  const fault = useSignal<{ readonly error: unknown } | null>(null);
  if (fault.value) throw fault.value.error;
  return (error) => void (fault.value = { error });
}
