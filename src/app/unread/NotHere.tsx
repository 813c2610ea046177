import { useContext } from 'preact/hooks';
import { shelf, type Unreadable } from '../../records/shelf';
import { WaysOut } from '../../ui/fault/FaultNotice';
import { PageHead } from '../nav/PageHead';
import { unreadName } from './unreadName';
import '../sheet/paper.css';

/** In place of the page of a record that is not on hand: as it is stored where it cannot be read, else that there is none. */
export function NotHere({ id }: { id: string }) {
  const unread = shelf.unreadable.value.find(({ raw }) => raw.id === id);
  if (unread) return <AsStored {...unread} />;
  return (
    <main class="page">
      <PageHead title="Not here" />
      <p class="quiet">This is not on this phone, or was erased.</p>
    </main>
  );
}

/** A record that this version cannot read, as it is: to look at, to print, and to take along in a backup. */
function AsStored({ raw, why }: Unreadable) {
  const Ways = useContext(WaysOut);
  return (
    <main class="page paper">
      <PageHead title={unreadName(raw)} />
      <p class="trouble">Minim cannot read this entry. It is kept as it is, and every backup has it.</p>
      <p>{why}</p>
      <pre class="as-stored">{JSON.stringify(raw, null, 1)}</pre>
      <Ways again={() => {}} />
      <footer class="actions">
        <button class="main" onClick={() => print()}>
          Print
        </button>
      </footer>
    </main>
  );
}
