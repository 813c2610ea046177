import { Say } from '../../ui/controls/Say';
import { piecesOf, type Slot } from '../engine/card';
import type { Card, Offer } from '../engine/task';
import { Chips } from './CardChips';
import { Impossible } from './Impossible';
import { SlotWords } from './Sentence';

interface Props {
  card: Card;
  slots: readonly Slot[];
  onOpen: (name: string) => void;
  onTake: (offer: Offer<string>) => unknown;
}

/** The sentences of a card that has several, each with what it comes to; and what cannot be as it is, under its sentence. */
export function Sections({ card: { sections }, slots, onOpen, onTake }: Props) {
  if (!sections) return <Impossible slots={slots} onTake={onTake} />;
  return (
    <div class="card-sections">
      {sections.map(({ title, sentence, lines, folded = [], dangers = [], chips = [], picture }) => (
        <section key={title}>
          <h3>{title}</h3>
          <SlotWords sentence={sentence} slots={slots} onOpen={onOpen} onPill={() => undefined} />
          <Impossible slots={within(sentence, slots)} onTake={onTake} />
          {dangers.map((danger) => (
            <p class="trouble danger">{danger}</p>
          ))}
          {lines.map((line) => (
            <p class="quiet">
              <Say text={line} />
            </p>
          ))}
          {folded.length > 0 && <FoldedLines lines={folded} />}
          {picture?.()}
          <Chips names={chips} slots={slots} onOpen={onOpen} />
        </section>
      ))}
    </div>
  );
}

function within(sentence: string, slots: readonly Slot[]): Slot[] {
  const names = piecesOf(sentence).flatMap((piece) => ('slot' in piece ? piece.slot : []));
  return slots.filter(({ field }) => names.includes(field.name));
}

function FoldedLines({ lines: [first = '', ...more] }: { lines: readonly string[] }) {
  return (
    <details>
      <summary>{first}</summary>
      {more.map((line) => (
        <p class="quiet">
          <Say text={line} />
        </p>
      ))}
    </details>
  );
}
