/**
 * The pictogram for flammable liquids (GHS02 of the United Nations' Globally Harmonized System: a flame over a line, in
 * a diamond framed in red), drawn here by hand. Paths in a square of 100 × 100.
 */
export const flameFrame = 'M50 0L100 50L50 100L0 50Z';
export const flameField = 'M50 9L91 50L50 91L9 50Z';
export const flameShape =
  'M49 17C53 29 67 37 67 54C67 61 63 66 58 69C60 64 59 59 55 55C54 60 52 62 49 63C50 57 48 52 44 48C45 55 40 58 40 64C40 66 41 68 42 69C36 66 33 61 33 54C33 47 37 43 39 38C40 41 41 42 42 44C47 37 51 28 49 17Z' +
  'M34 73H66V78H34Z';
