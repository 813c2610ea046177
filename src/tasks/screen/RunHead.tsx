import { useSignal } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import { BackButton } from '../../ui/BackButton';
import { Sheet } from '../../ui/controls/Sheet';
import { usePageTitle } from '../../ui/controls/usePageTitle';
import { more } from '../../ui/drawn/actionIcons';
import { Icon } from '../../ui/drawn/Icon';
import { HandsSwitches } from './HandsSwitches';
import { offersAt, useOffers } from './StepActions';
import type { Offer, Walk } from '../engine/task';
import './runHead.css';

interface Props {
  walk: Walk;
  /** What an offer of the step that stands behind ⋯ does when it is taken. */
  ways: Parameters<typeof useOffers>[1];
  onBack: () => void;
  onPause: () => void;
  onDiscard: () => void;
}

/** The head of a run: the way back, what it is, and ⋯ with what is rarely wanted. */
export function RunHead({ walk, ways, onBack, onPause, onDiscard }: Props) {
  const take = useOffers(walk, ways);
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
        <Title words={walk.title.value} />
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
          onTake={(offer) => chosen(() => void take(offer))}
          onPause={() => chosen(onPause)}
          onDiscard={() => chosen(onDiscard)}
          onClose={() => (open.value = false)}
        />
      )}
    </>
  );
}

/** A title of which no name is broken while there is room for it on a line of its own. */
function Title({ words }: { words: string }) {
  usePageTitle(words);
  const [first, ...names] = words.split(' · ');
  return (
    <h1>
      {first}
      {names.map((name) => (
        <>
          {' · '}
          <span class="piece">{name}</span>
        </>
      ))}
    </h1>
  );
}

interface SheetProps extends Omit<Props, 'onBack' | 'ways'> {
  onTake: (offer: Offer<string>) => void;
  onClose: () => void;
}

/** What the step rarely offers; pause and discard, where the run leaves something behind; and what helps busy hands. */
function MoreSheet({ walk, onTake, onPause, onDiscard, onClose }: SheetProps) {
  const rare = offersAt(walk.step.value, 'more');
  return (
    <Sheet title={walk.title.value} onClose={onClose}>
      {rare.length > 0 && (
        <div class="sheet-rows">
          {rare.map((offer) => (
            <Row words={offer.words} onTap={() => onTake(offer)} />
          ))}
        </div>
      )}
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

function Row({ words, hint, onTap }: { words: string; hint?: string; onTap: () => void }) {
  return (
    <button type="button" class="sheet-row" onClick={onTap}>
      <b>{words}</b>
      {hint && <small>{hint}</small>}
    </button>
  );
}
