import { useEffect } from 'preact/hooks';
import { remind } from '../screen/reminders';
import type { Walk } from '../engine/task';
import { FanPicture } from './FanPicture';
import { familyOf } from './families';
import { StripChips, useDrying } from './StripChips';
import { useNow } from './now';
import { beginReading, dueAt, momentText, smelledAt } from './readings';
import { restHint } from './rest';
import { ADVISED_STRIPS, inFan, MOST_STRIPS } from './strips';
import { pairsOfFan } from './together';
import { tagOf } from '../../workshop/labelled';

/** The fan in the hand: how the strips dry, when to smell, and what can be done with them. */
export function FanHub({ walk }: { walk: Walk }) {
  const run = walk.state.value;
  const fan = inFan(run);
  const drying = useDrying(fan);

  useEffect(() => remind(walk.id, walk.task), [run]);

  return (
    <>
      <FanPicture
        strips={drying.map(({ strip: { vial }, drying: { ready, wet } }) => ({
          id: vial.id,
          code: tagOf(vial),
          ready,
          wet,
          family: familyOf(run, vial.id),
        }))}
      />
      <Status walk={walk} waiting={drying.filter((one) => !one.drying.ready).length} />
      <StripChips inOneRow strips={fan} onStrip={({ vial }) => void walk.goTo(`strip.${vial.id}`)} />
      <Actions walk={walk} full={fan.length >= MOST_STRIPS} />
    </>
  );
}

function Actions({ walk, full }: { walk: Walk; full: boolean }) {
  async function read() {
    const { n, happenings } = beginReading(walk.state.peek(), Date.now());
    if (await walk.happen(...happenings)) await walk.goTo(`reading.${n}`);
  }
  return (
    <div class="hub-actions">
      <button class="second strong" onClick={() => void read()}>
        Write a reading
      </button>
      <div class="row">
        <button class="second" disabled={full} onClick={() => void walk.goTo('add')}>
          Add
        </button>
        <button class="second" onClick={() => void walk.goTo('swap')}>
          Swap
        </button>
        <button class="second" onClick={() => void walk.goTo('next')}>
          Pairs
        </button>
      </div>
    </div>
  );
}

/** How many pairs of the fan have met, and the advice of five. */
function PairsLine({ walk }: { walk: Walk }) {
  const run = walk.state.value;
  const { done, total } = pairsOfFan(run);
  const many = inFan(run).length > ADVISED_STRIPS;
  return (
    <small>
      {done} of {total} pairs of these smelled together.
      {many && ` At most ${ADVISED_STRIPS} at once is the usual advice.`}
    </small>
  );
}

/** One line: what to do now, and when the next reading is due. */
function Status({ walk, waiting }: { walk: Walk; waiting: number }) {
  const now = useNow(10_000);
  const { due, next } = dueAt(walk.state.value, now);
  const rest = restHint(smelledAt(walk.state.value), now);
  const minutes = next ? Math.max(1, Math.round((next.at - now) / 60_000)) : 0;
  const wait = minutes < 90 ? `${minutes} min` : `${Math.round(minutes / 60)} h`;
  return (
    <p class="status" role="status">
      {waiting > 0 ? (
        <b>{waiting === 1 ? 'One strip is still drying.' : `${waiting} strips are still drying.`}</b>
      ) : (
        <b>
          {due === null
            ? 'Smell when you like.'
            : `Smell now: ${due === 0 ? 'fresh' : `the ${momentText(due)} reading`}.`}
        </b>
      )}{' '}
      {rest && `${rest} `}
      {next && `${due === null ? 'Next' : 'Again'} in ${wait}.`}
      {inFan(walk.state.value).length > 2 && <PairsLine walk={walk} />}
    </p>
  );
}
