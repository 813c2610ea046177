import { answer } from '../engine/answers';
import type { Walk } from '../engine/task';
import { codesIn } from './answers';
import { askedCups, type Design } from './design';
import { fields } from './fields';
import { OrderTiles } from './OrderTiles';
import { PLACES } from './words';

interface Props {
  walk: Walk;
  design: Design;
  i: number;
  /** All codes in order, one tap each, instead of one. */
  ordered: boolean;
  locked: boolean;
}

/** The cups of a set by their codes, lowest first, so that their place gives nothing away; on a card, by their place. */
export function CodeTiles({ walk, design, i, ordered, locked }: Props) {
  const { name: key } = fields.choice(i);
  const cards = design.shuffle === 'cards';
  const codes = askedCups(design, design.sets[i]!)
    .map(({ code }) => code)
    .sort((a, b) => a - b);
  return (
    <OrderTiles
      label="Cups of this set"
      tiles={codes.map((code) => ({ value: code, words: cards ? `the ${PLACES[code - 1]}` : String(code) }))}
      chosen={codesIn(answer(walk.state.value, locked ? fields.locked(i) : fields.choice(i)))}
      ordered={ordered}
      locked={locked}
      onChoose={(chosen) => void walk.happen({ type: 'typed', key, text: chosen.join(' ') })}
    />
  );
}

/** The codes of the cards that can be under the set just answered. */
export function CardTiles({ walk, design, i, locked }: Omit<Props, 'ordered'>) {
  const { name: key } = fields.turned(i);
  const left = design.sets.slice(i).flatMap(({ card }) => card ?? []);
  return (
    <OrderTiles
      small
      label="Codes of the cards"
      tiles={left.sort((a, b) => a - b).map((card) => ({ value: card, words: String(card) }))}
      chosen={codesIn(answer(walk.state.value, locked ? fields.card(i) : fields.turned(i)))}
      locked={locked}
      onChoose={(chosen) => void walk.happen({ type: 'typed', key, text: chosen.join(' ') })}
    />
  );
}
