import { useLayoutEffect, useRef } from 'preact/hooks';
import { piecesOf, type Slot } from '../engine/card';
import type { Card } from '../engine/task';
import { Pills } from './CardChips';

interface SentenceProps {
  card: Card;
  said: string;
  slots: readonly Slot[];
  onOpen: (name: string) => void;
  /** An option is taken in the sentence itself. */
  onTake: (name: string, value: string) => void;
}

/** The sentence. A screen reader hears it whole as a heading, then each slot as what it is and what is in it. */
export function Sentence({ card, said, slots, onOpen, onTake }: SentenceProps) {
  const heading = useRef<HTMLHeadingElement>(null);
  useLayoutEffect(() => heading.current?.focus({ preventScroll: true }), []);
  return (
    <>
      <h2 class="say unseen" tabIndex={-1} ref={heading}>
        {said}
      </h2>
      {!card.sections && <SlotWords sentence={card.sentence} slots={slots} onOpen={onOpen} onPill={onTake} />}
    </>
  );
}

interface SlotWordsProps extends Pick<SentenceProps, 'slots' | 'onOpen'> {
  sentence: string;
  onPill: SentenceProps['onTake'];
}

/** A sentence with its slots in their places. */
export function SlotWords({ sentence, slots, onOpen, onPill }: SlotWordsProps) {
  return (
    <p class="sentence">
      {piecesOf(sentence).map((piece) => {
        if ('words' in piece) return <span class="words">{piece.words}</span>;
        const slot = slots.find(({ field }) => field.name === piece.slot);
        if (slot?.pills) return <Pills key={piece.slot} slot={slot} onTake={(value) => onPill(piece.slot, value)} />;
        return slot && <SlotButton key={piece.slot} slot={slot} sign={piece.sign} onOpen={() => onOpen(piece.slot)} />;
      })}
    </p>
  );
}

interface SlotProps {
  slot: Slot;
  /** The comma or point behind it. */
  sign: string;
  onOpen: () => void;
}

function SlotButton({ slot: { field, state, text }, sign, onOpen }: SlotProps) {
  const title = <span class="slot-title">{field.title} </span>;
  return (
    <span class="slot-and-sign">
      {state === 'fixed' ? (
        <span class="slot fixed">
          {title}
          {text}
        </span>
      ) : (
        <button class={`slot ${state}`} data-name={field.name} aria-haspopup="dialog" onClick={onOpen}>
          {title}
          <span class="slot-text">
            {state === 'impossible' && <span aria-hidden="true">⚠ </span>}
            {text}
          </span>
          <span class="unseen">, change</span>
        </button>
      )}
      {sign && <span class="words">{sign}</span>}
    </span>
  );
}
