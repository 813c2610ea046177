import type { Level } from '../core/limits/figure';

/** Standing cautions of the bench. A supplier's safety data sheet always wins. */
export interface Caution {
  readonly code: string;
  readonly words: string;
  readonly when: string;
  readonly source: string;
  readonly level: Level;
}

/** In the order they are shown. */
export const cautions: readonly Caution[] = [
  { code: 'flammable', words: 'Flammable liquid: no flame, spark, hot plate; small volumes; closed bottle', when: 'solvent or material with flash point up to 60 °C', source: 'GHS classes Flam. Liq. 2 and 3 (limits from memory); supplier data sheet', level: 'secondary' },
  { code: 'ventilate', words: 'Work with air moving away from you; let strips dry off away from the face', when: 'always', source: 'OSHA SHIB 10-14-2010; FEMA 2012 respiratory guidance', level: 'secondary' },
  { code: 'breathing', words: 'Breathing vapour can injure the lungs even if the material is safe to eat: diacetyl, 2,3-pentanedione, 2,3-hexanedione, 2,3-heptanedione, acetoin, acetaldehyde', when: 'material on the list or containing it', source: 'OSHA SHIB 10-14-2010; FEMA 2012 priority list', level: 'secondary' },
  { code: 'eyes and gloves', words: 'Eye protection and nitrile gloves when neat material is handled', when: 'neat material', source: 'FEMA/OSHA guidance; glove type common practice', level: 'secondary' },
  { code: 'sensitiser', words: 'May cause skin sensitisation', when: 'limonene, linalool (oxidised), citral, cinnamaldehyde, eugenol, isoeugenol, hydroxycitronellal, benzyl salicylate', source: 'EFSA FEEDAP opinions on essential oils: many irritate or sensitise skin and airways', level: 'secondary' },
  { code: 'phototoxic', words: 'Phototoxic on skin: expressed bergamot, lime, lemon, grapefruit, bitter orange; angelica root, rue. Wash off, keep from sun', when: 'material tagged furanocoumarin', source: 'assay page; published review; trade association values, as quoted', level: 'secondary' },
  { code: 'carcinogen', words: 'Contains a suspected or known carcinogen (safrole, methyleugenol, estragole): nutmeg oil was classed Carc. 1B, star anise and anise oils because of estragole of 1 % or more', when: 'constituent above the CLP trigger', source: 'EFSA FEEDAP 2023 opinions', level: 'primary' },
  { code: 'never neat', words: 'Never taste neat material; taste only a dilution in the finished base at a level inside the limits', when: 'always', source: 'common practice, no source', level: 'memory' },
  { code: 'label', words: 'Label every vial: name, strength, solvent, date, lot, hazard pictogram; no food-looking unlabelled vial', when: 'always', source: 'common practice, no source', level: 'memory' },
  { code: 'children', words: "Keep away from children, pets and from the kitchen’s food; lock away neat oils (a few mL of some oils have poisoned children)", when: 'always', source: 'common practice, no source', level: 'memory' },
  { code: 'bitter almond', words: "Bitter almond material: only “free from prussic acid”", when: 'bitter almond', source: '21 CFR 182.20', level: 'primary' },
  { code: 'caffeine', words: 'Pure caffeine and quinine are potent: weigh on a milligram scale, predilute; never dose by eye', when: 'caffeine, quinine', source: 'common practice, no source', level: 'memory' },
];

/** The sentence that stands under every result. */
export const NO_CERTIFICATE = 'Minim warns, it does not certify: the law where you sell, and licensed practice, decide.';
