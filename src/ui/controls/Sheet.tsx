import type { ComponentChildren } from 'preact';
import { useEffect, useRef } from 'preact/hooks';
import { onBack } from '../device/backEntry';
import { close } from '../drawn/actionIcons';
import { Icon } from '../drawn/Icon';
import './sheet.css';

interface Props {
  title: string;
  onClose: () => void;
  children: ComponentChildren;
}

/**
 * A sheet from below. What is behind it cannot be reached while it is open; Escape, the phone's back and a touch beside it close it, and the
 * focus goes back to what opened it.
 */
export function Sheet({ title, onClose, children }: Props) {
  const sheet = useRef<HTMLDialogElement>(null);
  const closing = useRef(onClose);
  closing.current = onClose;
  useEffect(() => {
    const opener = document.activeElement;
    sheet.current!.showModal();
    const off = onBack(() => closing.current());
    return () => {
      off();
      if (opener instanceof HTMLElement) asItIsNow(opener)?.focus({ preventScroll: true });
    };
  }, []);
  return (
    <dialog
      ref={sheet}
      class="sheet"
      aria-label={title}
      onCancel={(event) => {
        event.preventDefault(); // it goes when it is no longer drawn
        onClose();
      }}
      onClick={(event) => event.target === sheet.current && onClose()}
    >
      <div class="sheet-body">
        <header class="sheet-top">
          <h2>{title}</h2>
          <button type="button" class="round" aria-label="Close" onClick={onClose}>
            <Icon of={close} />
          </button>
        </header>
        {children}
      </div>
    </dialog>
  );
}

/** What opened a sheet; where it was drawn again meanwhile, what has its name now. */
function asItIsNow(opener: HTMLElement): HTMLElement | null {
  const name = opener.dataset['name'];
  if (opener.isConnected || name === undefined) return opener;
  return document.querySelector<HTMLElement>(`[data-name="${CSS.escape(name)}"]`);
}
