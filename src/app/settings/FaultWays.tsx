import { useSignal } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import { shelf } from '../../records/shelf';
import { whyGone } from '../../ui/codeGone';

/** Backup and reload, where something broke. It is tried again by itself when what is stored has changed. */
export function FaultWays({ again }: { again: () => void }) {
  const said = useSignal('');
  const records = shelf.records.value;
  const before = useRef(records);
  useEffect(() => {
    if (before.current !== records) again();
  }, [records]);
  const save = async () => {
    said.value = 'One moment…';
    const { giveBackupAsItIs, saveBackup } = await import('../keeping/giveBackup');
    said.value = await giveBackupAsItIs(saveBackup);
  };
  const gone = () => void (said.value = `This part could not be fetched. ${whyGone()}`);
  return (
    <>
      <div class="row">
        <button class="second" onClick={() => void save().catch(gone)}>
          Save a backup
        </button>
        <button class="second" onClick={() => location.reload()}>
          Reload
        </button>
      </div>
      <p role="status">{said.value}</p>
    </>
  );
}
