import { useSignal } from '@preact/signals';
import { Liking } from '../../ui/controls/Scale';
import type { Walk } from '../engine/task';
import type { Field } from '../engine/fields';
import { fields } from './fields';
import { beginNote, headOf, isDry, momentText, noteOf, openNote, typed } from './notes';
import { inFan } from './strips';
import { shownWords, toggleWord } from './wordList';

/** The note on what is under the nose: liking and words by one touch each; the first touch begins it. While strips are wet it is folded. */
export function NoteCard({ walk, wet }: { walk: Walk; wet: boolean }) {
  const run = walk.state.value;
  const open = openNote(run);
  const anyway = useSignal(false);
  if (wet && open === null && !anyway.value)
    return (
      <button class="second" onClick={() => (anyway.value = true)}>
        Write a note while wet
      </button>
    );
  const note = open === null ? null : noteOf(run, open);
  const isWet = note ? !isDry(note) : wet; // then it is words that are noted; a liking is for what is smelled dry
  const shown = shownWords(run, open);
  const words = (
    <div class="note-words">
      <button class="tile more" onClick={() => void openPage(walk)}>
        {shown.length > 0 ? 'More…' : 'Words…'}
      </button>
      {shown.map(({ word, chosen }) => (
        <button
          class={chosen ? 'tile on' : 'tile'}
          aria-pressed={chosen}
          onClick={() => void write(walk, fields.words, toggleWord(note?.words ?? '', word))}
        >
          {word}
        </button>
      ))}
    </div>
  );
  return (
    <section class="note-card" aria-label="Note">
      <Head walk={walk} wet={isWet} />
      {isWet && words}
      <Liking chosen={note?.liking ?? null} onChoose={(text) => void write(walk, fields.liking, text)} />
      {!isWet && words}
    </section>
  );
}

/** The open note, or one on the whole fan that is to be begun. */
function current(walk: Walk): ReturnType<typeof beginNote> {
  const run = walk.state.peek();
  const open = openNote(run);
  return open === null ? beginNote(run, Date.now()) : { n: open, happenings: [] };
}

async function write(walk: Walk, field: (n: number) => Field, text: string): Promise<void> {
  const { n, happenings } = current(walk);
  await walk.happen(...happenings, typed(field(n), text));
}

/** To the page with all that a note can say. */
async function openPage(walk: Walk): Promise<void> {
  const { n, happenings } = current(walk);
  if (happenings.length === 0 || (await walk.happen(...happenings))) await walk.goTo(`reading.${n}`);
}

/** What the note is about, and the way back from some strips to all. */
function Head({ walk, wet }: { walk: Walk; wet: boolean }) {
  const run = walk.state.value;
  const open = openNote(run);
  const fan = inFan(run).map(({ vial }) => vial.id);
  const note = open === null ? null : noteOf(run, open);
  const vials = note?.vials ?? fan;
  const whole = vials.length === fan.length;
  const what = whole && fan.length > 2 ? 'The whole fan' : headOf({ vials, minute: null });
  const moment = note?.minute ?? null;
  return (
    <div class="note-head">
      <p>
        <b>{what}</b>
        {moment !== null && `, ${momentText(moment)}`}
        {wet && <WetMark />}
      </p>
      {!whole && note?.empty && (
        <button class="second" onClick={() => void walk.happen(...beginNote(walk.state.peek(), Date.now()).happenings)}>
          Whole fan
        </button>
      )}
    </div>
  );
}

function WetMark() {
  return (
    <small class="wet-mark">
      <svg viewBox="0 0 12 16" aria-hidden="true">
        <path d="M6 0c4 6 6 8 6 11a6 5 0 0 1 -12 0c0-3 2-5 6-11Z" />
      </svg>{' '}
      Wet: does not count as smelled.
    </small>
  );
}
