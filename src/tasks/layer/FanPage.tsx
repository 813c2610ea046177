import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { tagOf } from '../../workshop/thing/labelled';
import { remind } from '../screen/reminders';
import type { Walk } from '../engine/task';
import { FanPicture } from './FanPicture';
import { familyOf } from './families';
import { NoteCard } from './NoteCard';
import { NotesSoFar } from './NotesSoFar';
import { useNow } from './now';
import { fields } from './fields';
import { beginNote, closing, dueAt, momentText, noteOf, openNote, smelledAt, typed } from './notes';
import { restHint } from '../shared/rest';
import { StripChips, useDrying } from './StripChips';
import { AddSheet, StripSheet } from './StripSheet';
import { ADVISED_STRIPS, inFan, MOST_STRIPS } from './strips';
import { pairsOfFan } from './together';

const DRAWN_WELL = 7; // strips; more of them lie so close that they are chips below, too (our choice)

/** The fan in the hand, on which everything happens: how the strips dry, what to smell, notes, and what can be done with each strip. */
export function FanPage({ walk }: { walk: Walk }) {
  const run = walk.state.value;
  const fan = inFan(run);
  const drying = useDrying(fan);
  const sheet = useSignal(sheetOf(run.at));
  const open = openNote(run);
  const smelled = open === null ? null : noteOf(run, open).vials;
  const waiting = drying.filter((one) => !one.drying.ready);
  const opened = fan.find(({ vial }) => vial.id === sheet.value);
  useEffect(() => remind(walk.id, walk.task), [run]);

  return (
    <>
      <FanPicture
        strips={drying.map(({ strip: { vial }, drying: { wet, short } }) => ({
          id: vial.id,
          code: tagOf(vial),
          wet,
          state: short,
          family: familyOf(run, vial.id),
          inHand: smelled === null || smelled.includes(vial.id),
        }))}
        onStrip={(id) => (sheet.value = id)}
      />
      <div class={fan.length > DRAWN_WELL ? undefined : 'beside-picture'}>
        <StripChips inOneRow strips={fan} onStrip={({ vial }) => (sheet.value = vial.id)} />
      </div>
      <Status walk={walk} waiting={waiting.length} />
      {fan.length > 0 && <NoteCard walk={walk} wet={waiting.length > 0} />}
      <NotesSoFar walk={walk} />
      {fan.length > 2 && <Pairs walk={walk} />}
      <Ways walk={walk} onAdd={() => (sheet.value = ADD)} />
      {sheet.value === ADD && <AddSheet walk={walk} onClose={() => (sheet.value = '')} />}
      {opened && <StripSheet walk={walk} strip={opened} onClose={() => (sheet.value = '')} />}
    </>
  );
}

const ADD = 'add';

/** The sheet that is open where a run of the first version was left beside its fan. */
function sheetOf(at: string): string {
  const [page, vial = ''] = at.split('.');
  return page === 'add' ? ADD : page === 'strip' || page === 'instead' ? vial : '';
}

/** What else can be done with the whole fan. */
function Ways({ walk, onAdd }: { walk: Walk; onAdd: () => void }) {
  const full = inFan(walk.state.value).length >= MOST_STRIPS;
  return (
    <div class="row ways">
      <button class="second" disabled={full} onClick={onAdd}>
        Add a strip
      </button>
      <button class="second" onClick={() => void walk.goTo('next')}>
        Pairs
      </button>
      <button class="second" onClick={() => void toFormula(walk)}>
        Take it to a formula
      </button>
    </div>
  );
}

/** Keeps the fan as it is, and goes on to its formula. */
async function toFormula(walk: Walk): Promise<void> {
  const run = walk.state.peek();
  const fan = inFan(run).map(({ vial }) => vial.id);
  const kept = [typed(fields.judged, fan.join(' ')), typed(fields.decision, 'keep'), typed(fields.draft, 'yes')];
  if (await walk.happen(...closing(run), ...kept)) await walk.goTo('draft', true);
}

/** How many pairs were smelled by themselves, and the next one. */
function Pairs({ walk }: { walk: Walk }) {
  const run = walk.state.value;
  const { done, total, next } = pairsOfFan(run);
  const strips = useDrying(next.flatMap((id) => inFan(run).find(({ vial }) => vial.id === id) ?? []));
  const codes = strips.map(({ strip: { vial } }) => tagOf(vial)).join(' + ');
  const dry = strips.every(({ drying }) => drying.ready);
  return (
    <div class="pairs">
      <p>
        <b>
          {done} of {total} pairs compared
        </b>
        {codes && !dry && `, next ${codes}`}
        <small>Two strips under the nose at once; the fan is one smell.</small>
      </p>
      {codes && dry && (
        <button
          class="second"
          onClick={() => void walk.happen(...closing(run), ...beginNote(run, Date.now(), next).happenings)}
        >
          Smell {codes}
        </button>
      )}
    </div>
  );
}

/** One line: what to do now, and when the next note is due. */
function Status({ walk, waiting }: { walk: Walk; waiting: number }) {
  const run = walk.state.value;
  const now = useNow(10_000);
  const { due, next } = dueAt(run, now);
  const rest = restHint(smelledAt(run), now);
  const minutes = next ? Math.max(1, Math.round((next.at - now) / 60_000)) : 0;
  const wait = minutes < 90 ? `${minutes} min` : `${Math.round(minutes / 60)} h`;
  const many = inFan(run).length > ADVISED_STRIPS;
  return (
    <p class="status" role="status">
      <b>{waiting > 0 ? stillWet(waiting) : nowWords(due)}</b> {rest && `${rest} `}
      {waiting === 0 && next && `Next note in ${wait}.`}
      {many && <small>{`At most ${ADVISED_STRIPS} at once is the usual advice.`}</small>}
    </p>
  );
}

function stillWet(strips: number): string {
  return strips === 1 ? 'One strip is still wet.' : `${strips} strips are still wet.`;
}

function nowWords(due: number | null): string {
  if (due === null) return 'Smell any time.';
  return due === 0 ? 'Dry: smell now, fresh.' : `Smell now, at ${momentText(due)}.`;
}
