import { back } from './drawn/firstIcons';
import { Icon } from './drawn/Icon';

/** The way back, at the left of a head. Escape presses it, too. */
export function BackButton({ onBack }: { onBack: () => void }) {
  return (
    <button type="button" class="round back" onClick={onBack} aria-label="Back">
      <Icon of={back} />
    </button>
  );
}

/** Lets Escape press the way back of the page that is shown: out of a field first, and not while a sheet is open, which it closes. */
export function escapeGoesBack(): () => void {
  const onKey = (event: KeyboardEvent) => {
    if (event.key !== 'Escape' || event.defaultPrevented || document.querySelector('dialog[open]')) return;
    const { target } = event;
    const typing = target instanceof HTMLInputElement && target.type !== 'radio' && target.type !== 'checkbox';
    if (!typing) document.querySelector<HTMLElement>('.top > .back')?.click();
    else if (target.type !== 'search' || target.value === '') target.blur();
  };
  addEventListener('keydown', onKey);
  return () => removeEventListener('keydown', onKey);
}
