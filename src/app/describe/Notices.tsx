import { NOT_FIT } from './overFacts';
import './notices.css';

/** Why something is not fit for drinks: each limit that it is over. Nothing where there is none. */
export function Notices({ notices }: { notices: readonly string[] }) {
  if (notices.length === 0) return null;
  return (
    <section class="trouble notices">
      <h2>{NOT_FIT}</h2>
      {notices.map((words) => (
        <p>{words}</p>
      ))}
    </section>
  );
}
