/**
 * Whether a drink is inside of what is published on keeping one like it. Nothing here says that a drink keeps: what is inside
 * was tested by others on other drinks. What can hurt someone is a danger, whatever else is said.
 */
import { volumesFermented } from '../drink/gas';
import { sentence, type Sentence } from '../text/refusal';
import { activeShare, type Preserving } from './preservative';
import { DELLE, delleUnits, waterActivity } from './strength';

/** A finding: a danger, outside of what was tested, inside of it, or said without a judgement. */
export interface KeepFinding {
  readonly state: 'danger' | 'outside' | 'inside' | 'said';
  readonly said: Sentence;
  readonly source: string;
}

/** A drink as it is judged: pH, g/L of titratable acid as citric, sugar in g/L and °Brix, % ABV, and mg/L of what is in it. */
export interface Drink {
  readonly ph: number | null;
  readonly acidGPerL: number;
  readonly sugarPerL: number;
  readonly brix: number;
  readonly abv: number;
  readonly benzoicMgPerL: number;
  readonly sorbicMgPerL: number;
  readonly ascorbicMgPerL: number;
  /** How it is treated: kept cold, heated in the closed bottle, filled hot, or not at all. */
  readonly treated: 'cold' | 'bottle' | 'hot' | 'none';
}

/** The two acids that keep. */
export interface Preservings {
  readonly benzoic: Preserving;
  readonly sorbic: Preserving;
}

/** Above this pH spores that make people ill can grow. Source: 21 CFR 114.3 (low-acid foods). */
export const LOW_ACID = 4.6;

/** Above this pH little of either acid works. Our choice: a third of the benzoic acid, two thirds of the sorbic. */
const NO_USE = 4.5;

/** g/L of sugar from which on yeast can make a volume of gas and more. Our choice, from 4 g/L a volume. */
const SUGARY = 5;

/** What was tested of cold-filled drinks with both preservatives. Source: Appl Environ Microbiol 68 (2002) 1901. */
const TESTED = { ph: [2.8, 3.8], acid: [2, 6], brix: [8, 16], mg: [100, 350] } as const;
const TESTED_IN = 'Appl. Environ. Microbiol. 68 (2002) 1901, cold-filled drinks; its coefficients were not read';

/**
 * All findings on a drink, dangers first. Shares 0 to 1, amounts as in {@link Drink}. Source: with each finding.
 */
export function keepingOf(drink: Drink, acids: Preservings): KeepFinding[] {
  const all = [
    ...lowAcid(drink),
    ...benzene(drink),
    ...unprotected(drink),
    ...preserved(drink, acids),
    ...strong(drink),
    ...cold(drink),
  ];
  const order = ['danger', 'outside', 'inside', 'said'];
  return all.sort((one, other) => order.indexOf(one.state) - order.indexOf(other.state));
}

function lowAcid({ ph, abv }: Drink): KeepFinding[] {
  if (ph === null || ph <= LOW_ACID || abv >= 15) return [];
  const said = sentence(
    'pH {ph} is above 4.6, which is low acid: in a closed bottle spores can grow that make people gravely ill, and neither a preservative nor boiling water stops them. Add acid, or leave it to licensed practice.',
    { ph: { value: ph, decimals: 1 } },
  );
  return [{ state: 'danger', said, source: '21 CFR 113 and 114.3' }];
}

function benzene({ benzoicMgPerL, ascorbicMgPerL }: Drink): KeepFinding[] {
  if (benzoicMgPerL <= 0 || ascorbicMgPerL <= 0) return [];
  const said = sentence(
    'Benzoic acid and vitamin C together can form benzene, most of all in warmth and light. Leave one of them out: sorbic acid does not do this.',
  );
  return [{ state: 'danger', said, source: 'J. Agric. Food Chem. 41 (1993) 693; FDA on benzene in drinks' }];
}

function unprotected(drink: Drink): KeepFinding[] {
  if (isKept(drink) || drink.sugarPerL < SUGARY || drink.treated === 'cold') return [];
  const volumes = { value: volumesFermented(drink.sugarPerL), digits: 2 };
  const said = sentence(
    'There is sugar in it and nothing that stops yeast. In a closed bottle it can ferment until the bottle bursts: all of the sugar would make {volumes} volumes of gas. Preserve it, heat it, or keep it cold and drink it within days.',
    { volumes },
  );
  return [{ state: 'danger', said, source: 'sucrose gives four CO₂' }];
}

/** Whether anything is done against yeast: how well is another question. */
function isKept({ benzoicMgPerL, sorbicMgPerL, treated, sugarPerL, abv }: Drink): boolean {
  const isHeated = treated === 'bottle' || treated === 'hot';
  return benzoicMgPerL + sorbicMgPerL > 0 || isHeated || delleUnits(sugarPerL / 10, abv) >= DELLE;
}

function preserved(drink: Drink, { benzoic, sorbic }: Preservings): KeepFinding[] {
  const { ph, benzoicMgPerL, sorbicMgPerL } = drink;
  if (ph === null || benzoicMgPerL + sorbicMgPerL <= 0) return [];
  return [
    ...active('benzoic acid', benzoic, benzoicMgPerL, ph),
    ...active('sorbic acid', sorbic, sorbicMgPerL, ph),
    ...tested(drink, ph),
  ];
}

function active(name: string, acid: Preserving, mgPerL: number, ph: number): KeepFinding[] {
  if (mgPerL <= 0) return [];
  const share = activeShare(acid, ph);
  const data = { ph: { value: ph, decimals: 1 }, share: { value: 100 * share, decimals: 0 }, name } as const;
  const source = `constant of ${name}: pKa ${acid.pKa}`;
  if (ph > NO_USE)
    return [
      {
        state: 'outside',
        said: sentence(
          'At pH {ph} only {share} % of the {name} works: it does not keep this drink. Add acid first.',
          data,
        ),
        source,
      },
    ];
  const mg = { value: mgPerL * share, digits: 3 };
  return [
    { state: 'said', said: sentence('At pH {ph}, {share} % of the {name} works: {mg} mg/L.', { ...data, mg }), source },
  ];
}

/** Inside of what was tested, or what of it is outside. */
function tested({ acidGPerL, brix, benzoicMgPerL, sorbicMgPerL }: Drink, ph: number): KeepFinding[] {
  const isIn = (value: number, [least, most]: readonly [number, number]) => value >= least && value <= most;
  const out = [
    ...(isIn(ph, TESTED.ph) ? [] : ['pH']),
    ...(isIn(acidGPerL, TESTED.acid) ? [] : ['titratable acid']),
    ...(isIn(brix, TESTED.brix) ? [] : ['°Brix']),
    ...(isIn(benzoicMgPerL, TESTED.mg) ? [] : ['benzoic acid']),
    ...(isIn(sorbicMgPerL, TESTED.mg) ? [] : ['sorbic acid']),
  ];
  const said =
    out.length === 0
      ? sentence(
          'Inside of what was tested of cold-filled drinks with both preservatives. That is no promise: yeast that bears preservatives lives in dirty taps and hoses.',
        )
      : sentence(
          'Outside of what was tested of cold-filled drinks (pH 2.8–3.8, 2–6 g/L of acid, 8–16 °Brix, 100–350 mg/L of each preservative): {out}. Keep a few bottles warm for weeks and check them first.',
          { out: out.join(', ') },
        );
  return [{ state: out.length === 0 ? 'inside' : 'outside', said, source: TESTED_IN }];
}

function strong({ sugarPerL, brix, abv }: Drink): KeepFinding[] {
  const delle = delleUnits(sugarPerL / 10, abv);
  const units = { value: delle, digits: 3 };
  const wine = 'winemakers’ rule of Delle, for sweet wine';
  const ofAlcohol: KeepFinding[] =
    abv < 5
      ? []
      : delle >= DELLE
        ? [{ state: 'inside', said: sentence('{units} Delle units: from 78 on sugar and alcohol together are said to stop yeast.', { units }), source: wine }]
        : [{ state: 'outside', said: sentence('{units} Delle units: below 78 sugar and alcohol do not stop yeast by themselves.', { units }), source: wine }]; // prettier-ignore
  return [...ofAlcohol, ...dry(brix)];
}

/** From what °Brix on water activity says something. Our choice. */
const SYRUP = 45;

function dry(brix: number): KeepFinding[] {
  if (brix < SYRUP || brix > 67.1) return [];
  const said = sentence(
    'Water activity about {activity}, from the sugar alone: bacteria of concern stop at 0.85, yeast that likes sugar near 0.6.',
    { activity: { value: waterActivity(brix), decimals: 2 } },
  );
  return [{ state: 'said', said, source: 'Norrish 1966; 0.85: 21 CFR 114.3; 0.6: from memory' }];
}

function cold({ treated }: Drink): KeepFinding[] {
  if (treated !== 'cold') return [];
  const said = sentence(
    'Cold slows what grows, and does not stop it: keep it below 5 °C, open a bottle a day, and throw it away when it hisses or swells.',
  );
  return [{ state: 'outside', said, source: 'common practice' }];
}
