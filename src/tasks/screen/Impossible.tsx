import type { Slot } from '../engine/card';
import type { Offer } from '../engine/task';

interface Props {
  slots: readonly Slot[];
  onTake: (offer: Offer<string>) => unknown;
}

/** What cannot be as it is, each with what mends it. */
export function Impossible({ slots, onTake }: Props) {
  return slots
    .filter(({ state }) => state === 'impossible')
    .map(({ field, wrong, mend }) => (
      <p class="trouble" key={field.name}>
        {wrong} {mend && <OfferButton offer={mend} onTake={onTake} />}
      </p>
    ));
}

/** A second way on. */
export function OfferButton({ offer, onTake }: { offer: Offer<string>; onTake: Props['onTake'] }) {
  return (
    <button class="second" onClick={() => onTake(offer)}>
      {offer.words}
    </button>
  );
}
