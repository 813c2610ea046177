import { CONCENTRATE } from '../../core/drink/batchPlan';
import { exact, plus } from '../../core/number/measured';
import { gramsText } from '../../ui/format';
import { answer, types } from '../engine/answers';
import type { RunState } from '../engine/fold';
import type { Offer, Step } from '../engine/task';
import { begunField, begunIn, type Begun, type VesselName } from './plan/begun';
import { isSaid } from './plan/drinkAsked';
import { fields } from './plan/fields';
import { carrierKey, stepOf, type Pour } from './vessel/pour';
import type { Making } from './progress';
import { slipsOf } from './vessel/vessel';
import { BEGUN_AGAIN, halfMixed, lossesOf } from './takings';

/** The way out of whatever is wrong: what is in the vessel is given up, and it is filled from nothing. None while it is empty. */
export function beginAgainOffer(run: RunState, making: Making, { key, into }: Pour): Offer[] {
  const own: VesselName = into === 'concentrate' ? 'concentrate' : 'drink';
  if (!poursOf(making, own).some(({ mass }) => mass && mass.value > 0)) return [];
  const vessels = vesselsWith(run, making, own);
  const other = vessels.length === 1 ? '' : own === 'drink' ? ', and the concentrate' : ', and the drink';
  const begun = begunAt(run, making, { at: key, vessels });
  return [{ words: `Begin this vessel again${other}`, type: types(begunField, [...begunIn(run), begun]) }];
}

/**
 * The steps at which these vessels were begun again: what is lost, and the way back while nothing new is in. One that was left
 * is passed no second time; who goes back to it finds it.
 */
export function begunSteps(run: RunState, making: Making, of: 'concentrate' | 'drink alone'): Step[] {
  const emptied = answer(run, fields.emptied) ?? 0;
  return begunIn(run).flatMap((begun, i, all) => {
    const isOf = begun.vessels.includes('concentrate') === (of === 'concentrate');
    if (!isOf || (i < emptied && run.at !== begun.at)) return [];
    const canUndo = i === all.length - 1 && isUntouched(run, making, begun);
    return [
      {
        ...begunStep(run, begun),
        ...(canUndo ? { offers: [undo(all)] } : {}),
        types: { [fields.emptied.name]: String(all.length) },
      },
    ];
  });
}

function undo(all: readonly Begun[]): Offer {
  return { words: 'Undo: continue with what is in it', type: types(begunField, all.slice(0, -1)) };
}

function begunStep(run: RunState, { at, vessels, was, taken, poured }: Begun): Step {
  const lines = was.map(
    ({ what, lot, massG, scale }) => [lot ? `${what}, ${lot}` : what, gramsText(massG, stepOf(run, scale))] as const,
  );
  const isLost = taken.length > 0 || poured !== null;
  const both = 'Empty both vessels: concentrate and drink begin again.';
  return {
    key: at,
    say: vessels.length > 1 ? both : 'Empty this vessel: it begins again.',
    more: [
      ...lines.map(([what, grams]) => `${what}: ‹${grams}›.`),
      ...(isLost ? ['What left its bottles for this is counted as lost.'] : []),
    ],
    told: lines,
    done: 'It is empty',
  };
}

/** The vessel, or both: with the concentrate a drink that it is in, with a drink the concentrate where too little of it is left. */
function vesselsWith(run: RunState, making: Making, own: VesselName): VesselName[] {
  const poured = pouredIn(making).value;
  if (poured === 0) return [own];
  const left = making.there - poured;
  const isEnough = making.neededG - left <= stepOf(run, 'fine');
  return own === 'drink' && making.concentrate && isEnough ? [own] : ['concentrate', 'drink'];
}

function begunAt(run: RunState, making: Making, { at, vessels }: Pick<Begun, 'at' | 'vessels'>): Begun {
  const pours = vessels.flatMap((vessel) => poursOf(making, vessel));
  const inside = making.vessel.pours;
  const [isMade, poured] = [vessels.includes('concentrate'), pouredIn(making)];
  const drink = vessels.includes('drink') ? making.syrup.pours : [];
  const ofDrink = [...lossesOf(drink, [{ share: 1, why: BEGUN_AGAIN }]), ...halfMixed(run, drink)];
  return {
    at,
    vessels,
    was: pours.flatMap(({ goods, mass, scale }) =>
      mass && mass.value > 0 ? [{ what: goods.name, lot: goods.source?.lot ?? '', massG: mass.value, scale }] : [],
    ),
    taken: [
      ...(isMade ? [...lossesOf(inside, [{ share: 1, why: BEGUN_AGAIN }]), ...halfMixed(run, inside)] : []),
      ...ofDrink,
    ],
    poured: isMade || poured.value === 0 ? null : poured,
    slips: slipsOf(run, pours),
  };
}

function poursOf({ vessel, syrup }: Making, of: VesselName): readonly Pour[] {
  return (of === 'concentrate' ? vessel : syrup).pours;
}

/** g of the concentrate that are in the drink. */
function pouredIn({ syrup }: Making) {
  return plus(exact(0), ...syrup.pours.flatMap(({ goods, mass }) => (goods.id === CONCENTRATE && mass ? [mass] : [])));
}

/** True while nothing was typed of what goes into them now. */
function isUntouched(run: RunState, making: Making, { vessels }: Begun): boolean {
  const keys = vessels
    .flatMap((vessel) => poursOf(making, vessel))
    .flatMap(({ key, stock }) => [key, ...(stock ? [stock.key, carrierKey(stock.key)] : [])]);
  return keys.every((key) => !isSaid(run, `mass.${key}`));
}
