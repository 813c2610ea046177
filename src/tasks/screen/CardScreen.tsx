import { useSignal, type Signal } from '@preact/signals';
import type { ComponentChildren } from 'preact';
import { firstOpen, sentenceText, slotsOf, type Slot } from '../engine/card';
import type { Card, CardAnswer, Offer, Step, Walk } from '../engine/task';
import { Chips } from './CardChips';
import { Say } from '../../ui/controls/Say';
import { Sheet } from '../../ui/controls/Sheet';
import { useAwake } from './awake';
import { DropRow } from './DropRow';
import { OfferButton } from './Impossible';
import { Sections } from './Sections';
import { Sentence } from './Sentence';
import { SlotSheet } from './SlotSheet';
import { offersAt, Trouble, useOffers } from './StepActions';
import './card.css';

interface Props {
  walk: Walk;
  onDone: (then?: Offer['start']) => void;
  onHow: (result: number) => void;
  onStart: (start: NonNullable<Offer['start']>, instead?: true) => void;
  /** Why the step cannot be left, once that was tried. */
  wrong: string | undefined;
}

/** A card: the sentence with its slots, the picture and the answer, one piece of advice, and the next movement of the hand. */
export function CardScreen({ walk, onDone, onHow, onStart, wrong }: Props) {
  const step = walk.step.value;
  const card = step.card!;
  const slots = slotsOf(walk.state.value, step);
  const open = useSignal('');
  const opened = slots.find(({ field }) => field.name === open.value);
  const sheet = step.offers?.find(({ words }) => words === open.value)?.sheet;
  const handsOn = useOffers(walk, { onDone, onStart });
  const take: Take = (offer) => (offer.sheet ? (open.value = offer.words) : handsOn(offer));
  const answer = <AnswerRow card={card} picture={card.picture?.(walk)} onHow={onHow} />;
  const isBelow = !card.picture && (step.draw !== undefined || card.sections !== undefined); // always in sight under what is long
  const show = (name: string) => (open.value = name);
  const close = () => void (open.value = '');
  return (
    <>
      <div class="body task-card">
        <Sentence
          card={card}
          said={sentenceText(walk.state.value, step)}
          slots={slots}
          onOpen={show}
          onTake={(key, text) => walk.happen({ type: 'typed', key, text })}
        />
        <Sections card={card} slots={slots} onOpen={show} onTake={take} />
        {step.draw?.(walk)}
        {!isBelow && answer}
        {card.under?.(walk)}
        <Chips names={card.chips ?? []} slots={slots} onOpen={show} />
        <Foot step={step} onTake={take} />
      </div>
      <Actions {...{ walk, slots, wrong, onDone }} onTake={take} onOpen={show}>
        {isBelow && answer}
      </Actions>
      {opened && <OpenSheet key={opened.field.name} walk={walk} slot={opened} open={open} />}
      {sheet && <OfferSheet walk={walk} sheet={sheet} onClose={close} />}
    </>
  );
}

/** The sheet of a slot. It closes itself alone: another one may have been opened meanwhile. */
function OpenSheet({ walk, slot, open }: { walk: Walk; slot: Slot; open: Signal<string> }) {
  const { name } = slot.field;
  return <SlotSheet walk={walk} slot={slot} onClose={() => open.peek() === name && (open.value = '')} />;
}

interface OfferSheetProps {
  walk: Walk;
  sheet: NonNullable<Offer['sheet']>;
  onClose: () => void;
}

/** The sheet of an offer, as the task draws it. */
function OfferSheet({ walk, sheet: { title, draw }, onClose }: OfferSheetProps) {
  return (
    <Sheet title={title} onClose={onClose}>
      {draw(walk)}
    </Sheet>
  );
}

interface ActionsProps extends Pick<Props, 'walk' | 'wrong' | 'onDone'> {
  slots: readonly Slot[];
  onTake: Take;
  onOpen: (name: string) => void;
  children: ComponentChildren;
}

/** The foot: what went wrong, where drops are counted the drop, at most two other ways, and the main button. They sleep for a moment after a drop. */
function Actions({ walk, slots, wrong, onDone, onTake, onOpen, children }: ActionsProps) {
  const step = walk.step.value;
  const { counting, done, drawnFirst = false } = step;
  const awake = useAwake(counting ? (walk.state.value.drops[counting.counter] ?? 0) : 0);
  return (
    <footer class="actions">
      {children}
      <Trouble sentences={[walk.trouble.value, wrong]} />
      {counting && <DropRow walk={walk} counting={counting} awake={awake} />}
      <div class="row" onClickCapture={(touch) => !awake(touch) && touch.stopPropagation()}>
        {offersAt(step).map((offer) => (
          <OfferButton offer={offer} onTake={onTake} />
        ))}
        <Main missing={firstOpen(slots)} aside={drawnFirst} done={done} onOpen={onOpen} onDone={() => onDone()} />
      </div>
    </footer>
  );
}

type Take = (offer: Offer<string>) => unknown;

/** Advice, what else is worth a word, and cautions in one line. */
function Foot({ step: { card, more, cautions }, onTake }: { step: Step; onTake: Take }) {
  return (
    <div class="card-foot">
      {card!.advice && (
        <div class="advice">
          <p>{card!.advice.words}</p>
          {card!.advice.offer && <OfferButton offer={card!.advice.offer} onTake={onTake} />}
        </div>
      )}
      {more?.map((line) => (
        <p class="quiet">
          <Say text={line} />
        </p>
      ))}
      {cautions && cautions.length > 0 && <Cautions lines={cautions} />}
    </div>
  );
}

/** Cautions in one line, and all of them when it is touched. */
function Cautions({ lines }: { lines: readonly string[] }) {
  if (lines.length === 1) return <p class="card-cautions">{lines[0]}</p>;
  return (
    <details class="card-cautions">
      <summary>{lines[0]}</summary>
      {lines.slice(1).map((line) => (
        <p>{line}</p>
      ))}
    </details>
  );
}

interface MainProps {
  missing: Slot | undefined;
  /** What the card draws is the next tap. */
  aside: boolean;
  done: string | undefined;
  onOpen: (name: string) => void;
  onDone: () => void;
}

/** The main button: the next movement of the hand; where a slot keeps it from going on, what is missing, and its sheet. */
function Main({ missing, aside, done = 'Next', onOpen, onDone }: MainProps) {
  if (!missing)
    return (
      <button class={aside ? 'second aside' : 'main'} onClick={onDone}>
        {done}
      </button>
    );
  const { state, text, field, asks = `Choose ${text}` } = missing;
  return (
    <button class="main" aria-haspopup="dialog" onClick={() => onOpen(field.name)}>
      {state === 'empty' ? asks : `Change ${field.title.toLowerCase()}`}
    </button>
  );
}

/** The picture and the answer beside it; below a list the answer alone, always in sight. */
function AnswerRow({ card: { answer }, picture, onHow }: AnswerProps) {
  if (!answer && !picture) return null;
  return (
    <div class="answer-row">
      {picture}
      {answer && <Answer answer={answer} onHow={onHow} />}
    </div>
  );
}

interface AnswerProps {
  card: Card;
  picture: ComponentChildren;
  onHow: (result: number) => void;
}

function Answer({ answer: { big, lines, grade, how }, onHow }: { answer: CardAnswer; onHow: AnswerProps['onHow'] }) {
  return (
    <div class="card-answer" role="status">
      <p class="big">{big}</p>
      {lines.map((line) => (
        <p class="quiet">{line}</p>
      ))}
      {grade && <p class={grade.barred ? 'smell-only' : 'fit'}>{grade.words}</p>}
      {how !== undefined && (
        <button class="why" onClick={() => onHow(how)}>
          why ±?
        </button>
      )}
    </div>
  );
}
