import type { Walk } from '../engine/task';
import { headOf, notesWritten, noteWords, openNote } from './notes';

/** What was written so far, newest first; a touch opens a note to change it. */
export function NotesSoFar({ walk }: { walk: Walk }) {
  const run = walk.state.value;
  const open = openNote(run);
  const written = notesWritten(run).filter(({ n }) => n !== open);
  if (written.length === 0) return null;
  return (
    <ul class="notes" aria-label="Notes so far">
      {written.reverse().map(({ n, note }) => (
        <li key={n}>
          <button class="entry" onClick={() => void walk.goTo(`reading.${n}`)}>
            <b>{noteWords(note)}</b>
            <small>{`${clockTime(note.at)} · ${headOf(note)}`}</small>
          </button>
        </li>
      ))}
    </ul>
  );
}

function clockTime(at: string): string {
  return new Date(at).toLocaleTimeString([], { hour: '2-digit', minute: '2-digit' });
}
