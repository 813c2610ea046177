import type { Bottle, Material } from '../../records/kind/material';
import { find, list, newRecord } from '../../records/shelf';
import { answer, types } from '../engine/answers';
import type { RunState } from '../engine/fold';
import { asked, askForm, gramsOf, isOld, knownOf, neverFitIn } from './newBottleAsked';
import { bottleCard } from './newBottleCard';
import { bottleFields as fields } from './bottleFields';
import { holdsIn, ingredientFields, preparationIn, stimulantsIn } from './ingredientFields';
import { isMatched } from './matches';
import { drawNaming } from './Naming';
import type { Step } from '../engine/task';

const own = 'as typed from the bottle or its certificate';

export type NewBottleStep = 'new-material' | 'new-card';

function materialStep(run: RunState): Step<NewBottleStep> {
  const name = answer(run, fields.name);
  const [last] = list('bottle');
  const before = answer(run, fields.following) === 'yes' && last && find('material', last.material);
  return {
    key: 'new-material',
    say: 'What is in the bottle?',
    ...(before ? { more: [`${before.name} is on the Shelf. Now the next one.`] } : {}),
    draw: drawNaming,
    drawn: ['new.name'],
    ask: [fields.name],
    ...(isOld(run) ? {} : { types: types(fields.onCard, 'yes') }),
    done: name === null || knownOf(run) ? 'Next' : `Own material “${name}”`,
    drawnFirst: name !== null && !knownOf(run) && isMatched(name),
    ...(name === null ? { problem: 'Type its name, or the first letters, and choose.' } : {}),
  };
}

/**
 * The screens that ask for a new bottle: its name, and all the rest on one card. The name is not asked where a run begins with it: of a
 * material of the catalogue, or of one on the Shelf.
 */
export function newBottleSteps(run: RunState): Step<NewBottleStep>[] {
  const begunWith = run.at === '' && knownOf(run) !== null;
  return begunWith ? [bottleCard(run)] : [materialStep(run), bottleCard(run)];
}

function newMaterial(run: RunState): Material | null {
  const name = answer(run, fields.name);
  if (name === null) return null;
  const short = answer(run, asked(run).code);
  const facts = answer(run, fields.facts);
  const form = facts?.form ?? answer(run, askForm(run));
  const number = facts?.cas ?? answer(run, fields.cas);
  const botanical = facts ? null : answer(run, fields.plant);
  const preparation = preparationIn(run, facts);
  if (short === null || form === null) return null;
  return newRecord('material', {
    ...facts,
    sort: facts?.sort ?? 'natural',
    cautions: facts?.cautions ?? [],
    name,
    code: short,
    form,
    ...(number ? { cas: number } : {}),
    ...(botanical ? { botanical } : {}),
    ...(preparation ? { preparation } : {}),
  });
}

/**
 * The bottle and its material as asked for; null until name, code and form are there. `fresh` is false for a material that is
 * on the Shelf already. Ids and time are new at each call.
 */
export function newBottle(run: RunState): { material: Material; bottle: Bottle; fresh: boolean } | null {
  const known = find('material', answer(run, fields.material));
  const material = known ?? newMaterial(run);
  if (!material) return null;
  return { material, bottle: bottleOf(run, material.id), fresh: known === undefined };
}

function bottleOf(run: RunState, material: string): Bottle {
  const now = asked(run);
  const gPerMl = answer(run, fields.density);
  const purity = answer(run, fields.purity);
  const grams = gramsOf(run);
  const price = answer(run, fields.price);
  const texts = { received: now.received, useBy: fields.useBy, box: now.box, row: fields.row };
  const typed = Object.entries(texts).flatMap(([name, field]) => {
    const text = answer(run, field);
    return text ? [[name, text]] : [];
  });
  return newRecord('bottle', {
    from: [material],
    material,
    supplier: answer(run, now.supplier) ?? '',
    lot: answer(run, fields.lot) ?? '',
    grade: neverFitIn(run) ? 'smell only' : (answer(run, fields.grade) ?? 'smell only'),
    ...Object.fromEntries(typed),
    ...(gPerMl === null ? {} : { density: { gPerMl, atC: 20, source: own } }),
    ...(purity === null ? {} : { purity: purity / 100 }),
    ...holdingOf(run),
    ...(grams ? { amountG: grams.g } : {}),
    ...(grams && grams.u > 0 ? { amountU: grams.u } : {}),
    ...(!grams || price === null ? {} : { pricePerG: price / grams.g }),
  });
}

/** What an extract, tincture, infusion, juice or puree holds; nothing of an aroma material. */
function holdingOf(run: RunState): Pick<Bottle, 'holds' | 'allergens' | 'constituents'> {
  if (!preparationIn(run, knownOf(run))) return {};
  const [holds, constituents] = [holdsIn(run), stimulantsIn(run)];
  const allergens = answer(run, ingredientFields.allergens);
  return {
    ...(holds ? { holds } : {}),
    ...(constituents.length > 0 ? { constituents } : {}),
    ...(allergens ? { allergens } : {}),
  };
}
