import { useEffect } from 'preact/hooks';
import { blindCodes } from '../../core/sensory/blindCodes';
import type { Walk } from '../engine/task';
import { codesOf } from './series';

const MOST = 9; // glasses of a series with its blank: enough codes for any change of mind, so that written ones stay

/** Three-digit codes for the glasses, drawn once and stored before they are shown. */
export function drawCodes(count: number) {
  return (walk: Walk) => <Codes walk={walk} count={count} />;
}

function Codes({ walk, count }: { walk: Walk; count: number }) {
  const codes = codesOf(walk.state.value, count);
  useEffect(() => {
    if (!codes) void walk.happen({ type: 'typed', key: 'codes', text: blindCodes(MOST, chance).join(' ') });
  }, []);
  return (
    <ol class="codes">
      {codes?.map((code) => (
        <li>{code}</li>
      ))}
    </ol>
  );
}

/** From 0 up to, not including, 1, from the phone's own source of chance. */
function chance(): number {
  return crypto.getRandomValues(new Uint32Array(1))[0]! / 2 ** 32;
}
