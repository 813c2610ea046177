import { shelf } from '../../records/shelf';
import { go } from '../nav/route';
import { unreadName } from './unreadName';

/** What is kept and cannot be read, of runs or of everything else: each with the reason, and a page with all that is in it. */
export function UnreadableList({ runs = false }: { runs?: boolean }) {
  const unread = shelf.unreadable.value.filter(({ raw }) => (raw.kind === 'run') === runs);
  if (unread.length === 0) return null;
  return (
    <section>
      <h2>Could not be read</h2>
      <p class="quiet">Kept untouched, with the reason; nothing of it is lost.</p>
      <ul class="list">
        {unread.map(({ raw, why }) => (
          <li key={raw.id}>
            <button class="entry" onClick={() => go(['record', raw.id])}>
              <b>{unreadName(raw)}</b>
              <span>{why}</span>
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}
