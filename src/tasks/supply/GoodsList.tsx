import { useSignal } from '@preact/signals';
import { slotsOf, type Slot } from '../engine/card';
import { asTyped, types } from '../engine/answers';
import type { Walk } from '../engine/task';
import { Chips, Pills } from '../screen/CardChips';
import { SlotSheet } from '../screen/SlotSheet';
import { askedOf, came, isHere } from './fields';
import { goods, type Good } from './goods';
import './goods.css';

/** All that can come: one touch puts it on the list or takes it off; what came says its amount and grade under its name. */
export function GoodsList({ walk }: { walk: Walk }) {
  const run = walk.state.value;
  const slots = slotsOf(run, walk.step.value);
  const open = useSignal('');
  const opened = slots.find(({ field }) => field.name === open.value);
  const show = (name: string) => (open.value = name);
  const all = goods();
  return (
    <div class="goods">
      {['Solvents', 'Glass, paper and the rest'].map((heading, i) => (
        <section key={heading}>
          <h3>{heading}</h3>
          {all
            .filter(({ sort }) => (sort === 'solvent') === (i === 0))
            .map((good) => (
              <Row key={good.id} walk={walk} good={good} slots={slots} onOpen={show} />
            ))}
        </section>
      ))}
      {opened && <SlotSheet walk={walk} slot={opened} onClose={() => (open.value = '')} />}
    </div>
  );
}

interface RowProps {
  walk: Walk;
  good: Good;
  slots: readonly Slot[];
  onOpen: (name: string) => void;
}

function Row({ walk, good, slots, onOpen }: RowProps) {
  const isOn = isHere(walk.state.value, good);
  const type = (all: Record<string, string>) => walk.happen(...asTyped(all));
  return (
    <div class={isOn ? 'good here' : 'good'}>
      <button
        type="button"
        class="good-name"
        aria-pressed={isOn}
        onClick={() => void type(types(came(good), isOn ? 'no' : 'yes'))}
      >
        <b>{good.name}</b>
        {!isOn && (
          <span>{good.pack === 1000 && good.gPerMl ? '1 L' : `${good.pack} ${good.gPerMl ? 'mL' : 'pieces'}`}</span>
        )}
        {isOn && <span aria-hidden="true">✓</span>}
      </button>
      {isOn && (
        <Said
          walk={walk}
          good={good}
          slots={slots}
          onOpen={onOpen}
          onTake={(key, text) => void type({ [key]: text })}
        />
      )}
    </div>
  );
}

/** What is said of one that came. */
function Said({ walk, good, slots, onOpen, onTake }: RowProps & { onTake: (key: string, text: string) => void }) {
  const asked = askedOf(walk.state.value, good);
  const slot = (name: string) => slots.find(({ field }) => field.name === name);
  const small = [asked.lot.name, asked.useBy.name];
  const [name, amount, grade] = [asked.name, asked.amount, asked.grade].map((field) => slot(field.name));
  const shown = [name, amount, ...small.map(slot)].filter(
    (one) => one && (!small.includes(one.field.name) || one.state !== 'empty'),
  );
  return (
    <div class="said">
      {shown.map((one) => one && <SlotButton key={one.field.name} slot={one} onOpen={onOpen} />)}
      {grade ? (
        <Pills slot={grade} onTake={(value) => onTake(grade.field.name, value)} />
      ) : (
        good.gPerMl && <b class="smell-only">Smell only</b>
      )}
      <Chips names={small} slots={slots} onOpen={onOpen} />
    </div>
  );
}

function SlotButton({ slot: { field, state, text }, onOpen }: { slot: Slot; onOpen: (name: string) => void }) {
  return (
    <button
      type="button"
      class={`slot ${state}`}
      data-name={field.name}
      aria-haspopup="dialog"
      aria-label={`${field.title}: ${text}, change`}
      onClick={() => onOpen(field.name)}
    >
      {text}
    </button>
  );
}
