import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { deviceName } from '../../records/devices';
import type { AnyRecord } from '../../records/kind/kinds';
import { keep } from '../../records/shelf';
import { deviceHere } from '../../records/store/device';
import { apartOf, settled, type Apart } from '../../records/union/apart';
import { formatMoment } from '../../ui/format';
import { fieldTitle, valueText } from './apartWords';
import './apart.css';

/** What one device gave, of the fields that another gave otherwise. */
interface Given {
  readonly device: string | null;
  readonly at: number;
  readonly values: readonly { readonly key: string; readonly value: unknown }[];
}

/** What each device gave, the one whose values are shown now first. */
function givenBy(aparts: readonly Apart[]): Given[] {
  const sides = aparts.flatMap(({ key, sides }) => sides.map((side) => ({ key, ...side })));
  const devices = [...new Set(sides.map(({ device }) => device))];
  return devices.flatMap((device): Given[] => {
    const own = sides.filter((side) => side.device === device);
    if (device !== null) return [{ device, at: Math.max(...own.map(({ at }) => at)), values: own }];
    const moments = [...new Set(own.map(({ at }) => at))]; // of the time before devices had names
    return moments.map((at) => ({ device, at, values: own.filter((side) => side.at === at) }));
  });
}

/** What two devices gave a thing without knowing of each other, side by side; a tap on one settles it on all of them. */
export function ChooseSides({ record }: { record: AnyRecord }) {
  const here = useSignal<string | null>(null);
  useEffect(() => void deviceHere().then((id) => (here.value = id)), []);
  const trouble = useSignal('');
  const aparts = apartOf(record);
  if (aparts.length === 0) return null;
  const choose = (given: Given) =>
    keep([settled(record, given.values)]).catch((error: unknown) => {
      trouble.value = `It could not be stored: ${error instanceof Error ? error.message : String(error)}`;
    });
  return (
    <section class="apart">
      <p>Changed on two devices before they met again. Tap the one to keep; the other is dropped.</p>
      <div class="sides">
        {givenBy(aparts).map((given) => (
          <button class="side" key={`${given.device} ${given.at}`} onClick={() => void choose(given)}>
            <b>{nameOf(given.device, here.value)}</b>
            <small>{formatMoment(new Date(given.at).toISOString())}</small>
            {given.values.map(({ key, value }) => (
              <span class="value">
                <span>{fieldTitle(record, key)}</span>
                <bdi>{valueText(value)}</bdi>
              </span>
            ))}
          </button>
        ))}
      </div>
      {trouble.value && (
        <p class="trouble" role="alert">
          {trouble.value}
        </p>
      )}
    </section>
  );
}

function nameOf(device: string | null, here: string | null): string {
  const name = deviceName(device);
  if (device !== null && device === here) return name === null ? 'This device' : `${name} (this device)`;
  return name ?? 'Another device';
}
