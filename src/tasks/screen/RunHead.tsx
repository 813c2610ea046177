import { useSignal } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import { BackButton } from '../../ui/BackButton';
import { Sheet } from '../../ui/controls/Sheet';
import { more } from '../../ui/drawn/actionIcons';
import { Icon } from '../../ui/drawn/Icon';
import { HandsSwitches } from './HandsSwitches';
import type { Walk } from '../engine/task';
import './runHead.css';

interface Props {
  walk: Walk;
  onBack: () => void;
  onPause: () => void;
  onDiscard: () => void;
}

/** The head of a run: the way back, what it is, and ⋯ with what is rarely wanted. */
export function RunHead({ walk, onBack, onPause, onDiscard }: Props) {
  const open = useSignal(false);
  const then = useRef<(() => void) | null>(null);
  const chosen = (work: () => void) => {
    then.current = work;
    open.value = false;
  };
  useEffect(() => {
    if (open.value) return;
    then.current?.(); // the sheet is off the browser's history, or on its way
    then.current = null;
  }, [open.value]);
  return (
    <>
      <header class="top">
        <BackButton onBack={onBack} />
        <h1>{walk.title.value}</h1>
        <button
          type="button"
          class="round"
          aria-label="More"
          aria-haspopup="dialog"
          onClick={() => (open.value = true)}
        >
          <Icon of={more} />
        </button>
      </header>
      {open.value && (
        <MoreSheet
          walk={walk}
          onPause={() => chosen(onPause)}
          onDiscard={() => chosen(onDiscard)}
          onClose={() => (open.value = false)}
        />
      )}
    </>
  );
}

interface SheetProps extends Omit<Props, 'onBack'> {
  onClose: () => void;
}

/** Pause and discard, where the run leaves something behind; and what helps busy hands. */
function MoreSheet({ walk, onPause, onDiscard, onClose }: SheetProps) {
  return (
    <Sheet title={walk.title.value} onClose={onClose}>
      {walk.task.recorded && (
        <div class="sheet-rows">
          <Row words="Pause" hint="To the Bench; every tap is stored" onTap={onPause} />
          <Row
            words="Discard this run"
            hint="Off the Bench; it stays in the Book and can be resumed"
            onTap={onDiscard}
          />
        </div>
      )}
      <h3>Hands busy</h3>
      <HandsSwitches />
    </Sheet>
  );
}

function Row({ words, hint, onTap }: { words: string; hint: string; onTap: () => void }) {
  return (
    <button type="button" class="sheet-row" onClick={onTap}>
      <b>{words}</b>
      <small>{hint}</small>
    </button>
  );
}
