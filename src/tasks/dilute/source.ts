import { exact, measured, plus, type Measured } from '../../core/number/measured';
import { ethanolDensity, ethanolMassFraction } from '../../core/liquid/ethanol';
import { REFERENCE_TEMPERATURE, volumeFraction } from '../../core/number/units';
import type { Bottle, Material } from '../../records/kind/material';
import type { Grade } from '../../records/kind/quantity';
import { find, newRecord } from '../../records/shelf';
import type { Solvent, SolventCopy } from '../../records/kind/solvent';
import type { Supply } from '../../records/kind/supply';
import type { Vial } from '../../records/kind/vial';
import { answer } from '../engine/answers';
import type { RunState } from '../engine/fold';
import type { DropLiquid } from '../../workshop/dropMass';
import { labelSays, refusalOf } from '../../workshop/drinkable/grade';
import { neverFit } from '../../workshop/drinkable/neverFit';
import {
  TYPICAL_DENSITY,
  bottleWithMaterial,
  liquidOfVial,
  neatLiquid,
  ownOnHand,
  solventsOnHand,
  type SolventOnHand,
} from '../../workshop/onHand';
import { materialDensity } from '../../workshop/materialDensity';
import { contentsNow } from '../../workshop/thing/ageing';
import { purityOf } from '../../workshop/thing/purity';
import { newBottle } from '../shared/newBottle';
import { useByOf, useByOfBottle, type UseBy } from '../../workshop/useBy';
import { fields, foodField, isPlannedBefore } from './fields';
import { tagOf } from '../../workshop/thing/labelled';

/** What is diluted: neat from a bottle, or a vial. Strengths in g of neat material per g of the liquid; density in g/mL at 20 °C. */
export interface Source {
  readonly id: string;
  readonly name: string;
  readonly code: string;
  /** Code and strength: 'CARD neat', 'CARD 1 %'. */
  readonly tag: string;
  readonly contents: readonly { readonly material: string; readonly name: string; readonly strength: Measured }[];
  readonly density: Measured;
  readonly densitySource: string;
  /** Why it may not go into a drink, in one sentence; null when it may. */
  readonly refusal: string | null;
  readonly solid: boolean;
  readonly drop: DropLiquid;
  readonly supplier: string;
  readonly lot: string;
  /** Codes of the cautions table that the material carries. */
  readonly cautions: readonly string[];
  /** Families of its materials, and its last day of use: they tell how long a dilution keeps. */
  readonly families: readonly string[];
  readonly keeps: UseBy | null;
}

/** What was chosen to be diluted, or null while nothing is, or not enough of a new bottle is known. */
export function sourceOf(run: RunState): Source | null {
  const id = answer(run, fields.source);
  const vial = find('vial', id);
  if (vial) return ofVial(vial);
  const kept = id === 'new' ? newBottle(run) : bottleWithMaterial(id);
  return kept && ofBottle(kept, isPlannedBefore(run));
}

/** A vial as what is diluted: one on the Shelf, or one that is just being made. */
export function ofVial(vial: Vial): Source {
  return {
    id: vial.id,
    name: vial.name,
    code: vial.code,
    tag: tagOf(vial),
    contents: contentsNow(vial),
    refusal: refusalOf(vial),
    solid: false,
    supplier: vial.supplier,
    lot: vial.lot,
    drop: liquidOfVial(vial),
    densitySource: 'as made',
    cautions: [],
    families: vial.contents.map((part) => find('material', part.material)?.family ?? ''),
    keeps: useByOf(vial),
    density: exact(vial.densityGPerMl),
  };
}

function ofBottle({ bottle, material }: { bottle: Bottle; material: Material }, asBefore: boolean): Source {
  const isTyped = bottle.purity !== undefined || material.purity !== undefined;
  const known = bottle.density ?? material.density;
  return {
    id: bottle.id,
    name: material.name,
    code: material.code,
    tag: find('material', material.id) ? tagOf(bottle) : `${material.code} neat`, // a new one is not on the Shelf yet
    refusal: refusalOf(bottle),
    solid: material.form === 'solid',
    supplier: bottle.supplier,
    lot: bottle.lot,
    contents: [
      {
        material: material.id,
        name: material.name,
        strength: asBefore && !isTyped ? exact(1) : purityOf(bottle, material),
      },
    ],
    cautions: material.cautions,
    families: [material.family ?? ''],
    keeps: useByOfBottle(bottle, material),
    drop: neatLiquid(material),
    density: known ? materialDensity(known, bottle.id) : typicalDensity(material.name),
    densitySource: known ? known.source : 'typical of aroma materials, not confirmed: 0.84 to 1.06 g/mL',
  };
}

/** Density of a material no one has looked up, with its honest spread. */
function typicalDensity(name: string): Measured {
  const { value, halfWidth } = TYPICAL_DENSITY;
  return measured(value, halfWidth / Math.sqrt(3), {
    id: `density:${name}`,
    words: `density of ${name}, not looked up`,
  });
}

/** Total strength of a source, g/g. */
export function totalStrength(source: Source): Measured {
  return plus(...source.contents.map((part) => part.strength));
}

/** A solvent of the person's own, as asked for; null until name, density and grade are there. */
export function ownSolvent(run: RunState): Solvent | null {
  const name = answer(run, fields.solventName);
  const density = ownDensity(run);
  if (name === null || density === null) return null;
  const [flashC, cas, abv] = [answer(run, fields.solventFlash), answer(run, fields.solventCas), ownAlcohol(run)];
  return newRecord('solvent', {
    name,
    density,
    food: answer(run, foodField(run)) === 'yes' && neverFitOwn(run) === null,
    dryOff: 'unknown' as const,
    ...(flashC === null ? {} : { flashC }),
    ...(abv === null ? {} : { abv }),
    ...(cas ? { cas } : {}),
  });
}

/** Alcohol of a solvent of the person's own, mL/mL; null where it is not known, as in runs of older versions, which did not ask. */
export function ownAlcohol(run: RunState): number | null {
  const said = answer(run, fields.solventAlcohol);
  const percent = answer(run, fields.solventAbv);
  if (said === 'none') return 0;
  return said === 'yes' && percent !== null ? percent / 100 : null;
}

/** As typed, else as that of ethanol and water with that much alcohol. */
function ownDensity(run: RunState): Solvent['density'] | null {
  const typed = answer(run, fields.solventDensity);
  if (typed !== null) return { gPerMl: typed, atC: 20, source: 'as typed from the bottle' };
  const abv = ownAlcohol(run);
  if (abv === null || abv === 0) return null;
  const gPerMl = ethanolDensity(ethanolMassFraction(volumeFraction(abv)), REFERENCE_TEMPERATURE);
  return { gPerMl, atC: 20, source: 'of ethanol and water with that % vol: OIML R 22' };
}

/** Why a solvent of the person's own is never fit for drinks, by its name and CAS number; null where nothing speaks against it. */
export function neverFitOwn(run: RunState): string | null {
  return neverFit(answer(run, fields.solventName) ?? '', answer(run, fields.solventCas));
}

/** The bottle on the Shelf that the solvent is taken from, if one was chosen. */
export function solventBottleOf(run: RunState): Supply | undefined {
  return find('supply', answer(run, fields.solvent));
}

/** The solvent that was chosen, with `food` as its bottle says, or as answered for this bottle of it; null while none is. */
export function solventOf(run: RunState): SolventOnHand | null {
  const bottle = solventBottleOf(run);
  const id = bottle ? bottle.solvent : answer(run, fields.solvent);
  if (id === 'new') {
    const own = ownSolvent(run);
    return own && { ...ownOnHand(own), foodPossible: neverFitOwn(run) === null };
  }
  const chosen = solventsOnHand().find((solvent) => solvent.id === id);
  const says = bottle ? labelSays(bottle) : null;
  const food = says === null ? answer(run, foodField(run)) === 'yes' : says === 'fit for drinks';
  return chosen ? { ...chosen, food: chosen.foodPossible && food } : null;
}

/** The grade that a dilution gets: fit for drinks only if all of it is. */
export function gradeOf(source: Source, solvent: SolventOnHand): Grade {
  return source.refusal === null && solvent.food ? 'fit for drinks' : 'smell only';
}

/** What a vial keeps of its solvent. */
export function copyOf({ id, name, density, food, flashC, abv, cas, dryOff }: SolventOnHand): SolventCopy {
  return {
    id,
    name,
    density,
    food,
    dryOff,
    ...(flashC === undefined ? {} : { flashC }),
    ...(abv === undefined ? {} : { abv }),
    ...(cas === undefined ? {} : { cas }),
  };
}
