import { purityAtLeast } from '../../core/liquid/strength';
import { gramPerMl, massFraction, millilitre } from '../../core/number/units';
import { fillFor } from '../../core/dilution/dilution';
import { vialSet } from '../../core/dilution/vialSet';
import { list } from '../../records/shelf';
import { formatPlain, gramsText } from '../../ui/format';
import { PickRows, type PickItem } from '../../ui/controls/PickRows';
import { attempt, Refused } from '../../workshop/attempt';
import { dropOf } from '../../workshop/dropMass';
import { dropsText } from '../../workshop/dropWords';
import { answer, clears, handedOn, types } from '../engine/answers';
import type { RunState } from '../engine/fold';
import { bottleWithMaterial } from '../../workshop/onHand';
import { isSmellOnly } from '../../workshop/grade';
import { whyNotByItself } from '../../workshop/takenByItself';
import type { Offer, Walk } from '../engine/task';
import { fields, setUp, type DiluteStep } from './fields';
import { basisOf, sizeOf, strengthOf } from './making';
import { solventOf, typicalDensity } from './source';
import { labelTagOf, strengthWords, tagOf } from '../../workshop/labelled';

/** True while several vials are made at once. */
export function isSet(run: RunState): boolean {
  return answer(run, fields.set) === 'yes';
}

function pickedBottles(run: RunState) {
  return list('bottle').flatMap(({ id }) =>
    answer(run, fields.inSet(id)) === 'yes' ? (bottleWithMaterial(id) ?? []) : [],
  );
}

/** Which bottles is to be diluted alike. */
export function pickSetStep(run: RunState): DiluteStep {
  return {
    key: 'set',
    say: 'Which will you thin alike?',
    draw: (walk) => <SetPick walk={walk} />,
    told: [['Picked', pickedBottles(run).map(nameOfBottle).join(', ') || '–']],
    ...(pickedBottles(run).length === 0 ? { problem: 'Pick at least one bottle.' } : {}),
    offers: [{ words: 'Only one after all', type: clears(fields.set) }],
  };
}

function nameOfBottle({ bottle }: ReturnType<typeof pickedBottles>[number]): string {
  return [labelTagOf(bottle), bottle.lot && `lot ${bottle.lot}`].filter(Boolean).join(' ');
}

function SetPick({ walk }: { walk: Walk }) {
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
  const picked = (id: string) => answer(walk.state.value, fields.inSet(id)) === 'yes';
  const pick = (id: string, yes: boolean) =>
    void walk.happen({ type: 'typed', key: fields.inSet(id).name, text: yes ? 'yes' : '' });
  return <PickRows label="Bottles" items={items} picked={picked} onPick={pick} />;
}

/** What goes into each vial, and what all of them need together; each is then made as a run of its own. */
export function setPlanStep(run: RunState): DiluteStep {
  const kept = pickedBottles(run);
  const planned = attempt(() => planSet(run, kept));
  if (planned === null || planned instanceof Refused)
    return {
      key: 'set-plan',
      say: 'All of them together.',
      problem: planned?.problem ?? 'Something is still missing: go back.',
    };
  const { vials, solventVolume, drops, weighed } = planned;
  const solvent = solventOf(run)!;
  const scale = answer(run, fields.readability) ?? 0.01;
  const strength = strengthWords({ value: strengthOf(run)!, basis: basisOf(run) });
  const each = vials.map((vial, i) => {
    const amount = vial.drops ? dropsText(vial.drops.drops) : gramsText(vial.source, scale);
    return [tagOf(kept[i]!.bottle), `${amount} in ${formatPlain(vial.solventVolume, 3)} mL`] as const;
  });
  const totals = [
    `‹${formatPlain(solventVolume, 3)} mL› of ${solvent.name}`,
    drops > 0 ? `‹${dropsText(drops)}›` : '',
    weighed > 0 ? `‹${gramsText(weighed, scale)}› weighed in` : '',
  ];
  return {
    key: 'set-plan',
    say: `${vials.length} vials need ${totals.filter(Boolean).join(', ')}.`,
    more: each.map(([tag, amount]) => `‹${tag}›: ${amount}`),
    told: each,
    offers: kept.map(({ bottle, material }) => makeOffer(run, bottle.id, `${material.code} ${strength}`)),
    done: 'All are made',
  };
}

function planSet(run: RunState, kept: ReturnType<typeof pickedBottles>) {
  const solvent = solventOf(run);
  const size = sizeOf(run);
  const value = strengthOf(run);
  if (!solvent || size === null || value === null || kept.length === 0) return null;
  const items = kept.map(({ bottle, material }) => {
    const purity = bottle.purity ?? material.purity;
    const known = (bottle.density ?? material.density)?.gPerMl;
    const byDrops = answer(run, fields.way) === 'drops' && material.form !== 'solid';
    const drop = dropOf(answer(run, fields.dropper) ?? 'typical', { id: material.id, liquid: null, strength: 1 });
    return {
      id: bottle.id,
      density: known === undefined ? typicalDensity(material.name) : gramPerMl(known),
      purity: massFraction(purity === undefined ? 1 : purityAtLeast(purity * 100, bottle.id).value),
      mgPerDrop: byDrops ? drop.mgPerDrop.value : null,
    };
  });
  const strength = { value, basis: basisOf(run) };
  return vialSet(items, {
    strength,
    volume: fillFor(millilitre(size)),
    solventDensity: gramPerMl(solvent.density.gPerMl),
  });
}

function makeOffer(run: RunState, bottle: string, tag: string): Offer {
  const same = handedOn(run, [fields.strength('% w/v'), fields.basis, ...setUp]);
  return { words: `Make ${tag}`, start: { task: 'dilute', typed: { ...same, ...types(fields.source, bottle) } } };
}
