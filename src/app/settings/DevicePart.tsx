import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { deviceName, nameHere } from '../../records/devices';
import { list, shelf, whenLoaded } from '../../records/shelf';
import { deviceHere } from '../../records/store/device';
import { words } from '../../tasks/engine/fields';
import { FieldInput } from '../../ui/controls/FieldInput';
import { deviceSort } from '../keeping/deviceSort';

const field = words({
  name: 'device',
  title: 'This device is called',
  help: 'So that you see on which of your devices something was done.',
  max: 40,
});

/** The name of this device, and of the others that something came from. */
export function DevicePart() {
  const here = useSignal<string | null>(null);
  const typed = useSignal<string | null>(null);
  const recordsSeen = shelf.records.value;
  useEffect(() => void whenLoaded.then(deviceHere).then((id) => (here.value = id)), [recordsSeen]);
  if (here.value === null) return null;
  const text = typed.value ?? deviceName(here.value) ?? deviceSort();
  const answer = field.read(text);
  const others = list('device').flatMap(({ id, name }) => (id === here.value ? [] : name));
  const store = (now: string) => {
    typed.value = now;
    const read = field.read(now);
    return read.ok ? nameHere(read.value) : undefined;
  };
  return (
    <>
      <FieldInput field={field} text={text} problem={answer.ok ? undefined : answer.why} onText={store} />
      {others.length > 0 && <p class="quiet">Others that something came from: {others.join(', ')}.</p>}
    </>
  );
}
