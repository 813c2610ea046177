import { list } from '../../records/shelf';
import { PickRows, type PickItem } from '../../ui/controls/PickRows';
import { bottleWithMaterial } from '../../workshop/onHand';
import { labelTagOf, tagOf } from '../../workshop/thing/labelled';
import { isSmellOnly } from '../../workshop/drinkable/grade';
import { whyNotByItself } from '../../workshop/takenByItself';
import { answer, supposing, types } from '../engine/answers';
import type { RunState } from '../engine/fold';
import type { Walk } from '../engine/task';
import { settled } from './asked';
import { fields, type DiluteStep, type Rack } from './fields';
import { rackOf, vialsText } from './rack';

const MOST = 30; // our choice: a rack of more is made in two goes

/** The bottles that are diluted alike: those picked, the one of the card among them unless it was taken out. */
function picked(run: RunState): string[] {
  const first = answer(settled(run), fields.source);
  return list('bottle')
    .map(({ id }) => id)
    .filter((id) => (answer(run, fields.inSet(id)) ?? (id === first && !isTakenOut(run, id) ? 'yes' : '')) === 'yes');
}

function isTakenOut(run: RunState, id: string): boolean {
  return run.marks[`out.${id}`] !== undefined;
}

/** Which bottles are diluted alike, each into a vial of its own. */
export function pickStep(run: RunState): DiluteStep {
  const ids = picked(run);
  const rack: Rack = ids.map((id, i) => ({ name: String(i + 1), given: types(fields.source, id) }));
  const problem =
    ids.length === 0
      ? 'Pick at least one bottle.'
      : ids.length > MOST
        ? `A rack holds at most ${MOST} vials.`
        : undefined;
  return {
    key: 'set',
    say: 'Which bottles, each into a vial of its own?',
    draw: (walk) => <SetPick walk={walk} ids={ids} />,
    told: [['Picked', ids.map(nameOf).join(', ') || '–']],
    ...(problem ? { problem } : {}),
    types: types(fields.rack, rack),
    ...littleOf(run, rack),
    done: `Make ${vialsText(ids.length)}`,
  };
}

/** Those of which one step would take too little: each is better made by itself, through a stronger dilution. */
function littleOf(run: RunState, rack: Rack): { more?: string[] } {
  const few = rackOf(supposing(run, types(fields.rack, rack))).flatMap(({ order }) =>
    order?.plan.tooLittle ? order.source.tag : [],
  );
  return few.length === 0
    ? {}
    : { more: [`Too little to measure well: ${few.join(', ')}. Make it by itself, in two steps.`] };
}

function nameOf(id: string): string {
  const bottle = list('bottle').find((one) => one.id === id)!;
  return [labelTagOf(bottle), bottle.lot && `lot ${bottle.lot}`].filter(Boolean).join(' ');
}

function SetPick({ walk, ids }: { walk: Walk; ids: readonly string[] }) {
  const items = list('bottle').flatMap(({ id }): PickItem[] => {
    const kept = bottleWithMaterial(id);
    if (!kept) return [];
    const { bottle, material } = kept;
    return [
      {
        id,
        code: tagOf(bottle),
        name: material.name,
        what: [bottle.lot && `lot ${bottle.lot}`, whyNotByItself(bottle)].filter(Boolean).join(', '),
        smellOnly: isSmellOnly(bottle),
      },
    ];
  });
  const pick = (id: string, yes: boolean) =>
    void walk.happen(
      { type: 'typed', key: fields.inSet(id).name, text: yes ? 'yes' : '' },
      { type: yes ? 'unmark' : 'mark', key: `out.${id}` },
    );
  return <PickRows label="Bottles" items={items} picked={(id) => ids.includes(id)} onPick={pick} />;
}
