import { useSignal } from '@preact/signals';
import { changeSettings, shelf } from '../../records/shelf';
import { Sheet } from '../../ui/controls/Sheet';
import { close as cross } from '../../ui/drawn/actionIcons';
import { Icon } from '../../ui/drawn/Icon';
import { handsAreHelped, HandsSwitches } from './HandsSwitches';

/** On the first pad: help for wet hands, offered until it was looked at or refused. After that it is under ⋯. */
export function HandsOffer() {
  const open = useSignal(false);
  const settings = shelf.settings.value;
  const answered = () => void changeSettings({ handsOffered: true });
  const close = () => {
    open.value = false;
    answered();
  };
  if (open.value)
    return (
      <Sheet title="Wet hands?" onClose={close}>
        <HandsSwitches />
        <p class="quiet">Later it is under ⋯ at the top.</p>
      </Sheet>
    );
  if (settings.handsOffered || handsAreHelped(settings)) return null;
  return (
    <div class="hands-offer">
      <button type="button" aria-haspopup="dialog" onClick={() => (open.value = true)}>
        <b>Wet hands?</b> Count aloud, tick at each drop, or a foot switch
      </button>
      <button type="button" class="round" aria-label="No, thank you" onClick={answered}>
        <Icon of={cross} />
      </button>
    </div>
  );
}
