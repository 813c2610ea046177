import type { Outcome, Progress } from '../../records/pairing/exchange';
import { formatCount } from '../../ui/format';
import { ApartLine } from '../apart/ApartLine';
import { CameAndWent } from './CameAndWent';
import { leavePairing, said } from './pairing';

/** How far it is. */
export function Working({ progress, stop }: { progress: Progress; stop: AbortController }) {
  const { other, came, toCome, went, toGo } = progress;
  const all = toCome + toGo;
  return (
    <>
      <p role="status">
        {other ? `Connected with “${other}”.` : 'Connected.'} Keep both devices awake and Minim in front.
      </p>
      <dl class="facts">
        <div>
          <dt>Comes</dt>
          <dd>{`${formatCount(came)} of ${formatCount(toCome)}`}</dd>
        </div>
        <div>
          <dt>Goes</dt>
          <dd>{`${formatCount(went)} of ${formatCount(toGo)}`}</dd>
        </div>
      </dl>
      <progress value={all === 0 ? 0 : (came + went) / all} max={1} aria-label="Exchanging" />
      <button class="second" onClick={() => stop.abort()}>
        Stop; what came stays
      </button>
    </>
  );
}

/** How it ended, what came and went, and the way on. */
export function Ended({ outcome }: { outcome: Outcome }) {
  const whole = outcome.end === 'equal';
  return (
    <>
      <p class={whole ? '' : 'trouble'} role={whole ? 'status' : 'alert'}>
        {endWords(outcome)}
      </p>
      <ApartLine />
      <CameAndWent came={outcome.came} went={outcome.went} />
      <button class="main" onClick={leavePairing}>
        {whole ? 'Done' : 'Back to the codes'}
      </button>
    </>
  );
}

function endWords({ end, why, other }: Outcome): string {
  switch (end) {
    case 'equal':
      return other ? `This device and “${other}” hold the same now.` : 'Both devices hold the same now.';
    case 'changing':
      return 'Something was stored on one of them all the while. Pair again for the rest.';
    case 'stopped here':
      return 'Stopped. What came until then is stored; pair again, and only the rest goes.';
    case 'stopped there':
      return 'The other device stopped. What came until then is stored; pair again, and only the rest goes.';
    case 'broke':
      return 'The connection broke. What came until then is stored; pair again, and only the rest goes.';
    case 'refused':
      return why ? said(why) : '';
  }
}
