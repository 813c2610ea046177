/*
 * Icons of the Bench and what else is in the first load: paths in a box of 24, drawn with round lines of 2, each centred on
 * 12, 12 (tests/browser/drawn.test.ts measures that). Other icons are in actionIcons.ts, which comes with the pages that use it.
 */

/** A vial, half full. */
export const dilute = 'M8 3h8M9.5 3v4L6.5 11v8a2 2 0 0 0 2 2h7a2 2 0 0 0 2-2v-8l-3-4V3M6.5 15h11';
/** Three smelling strips in a fan. */
export const layer = 'M10 21V3h4v18zM10 8h4M7.2 18.5 2.5 9.2l3.4-1.8L7.5 10.5M16.8 18.5l4.7-9.3-3.4-1.8L16.5 10.5';
/** Three drops. */
export const count =
  'M12 2.5c2 2.4 3 4 3 5.3a3 3 0 0 1-6 0c0-1.3 1-2.9 3-5.3zM6.5 12.5c2 2.4 3 4 3 5.3a3 3 0 0 1-6 0c0-1.3 1-2.9 3-5.3zM17.5 12.5c2 2.4 3 4 3 5.3a3 3 0 0 1-6 0c0-1.3 1-2.9 3-5.3z';
/** A drop over a glass. */
export const dose =
  'M12 2c1.4 1.7 2 2.7 2 3.6a2 2 0 0 1-4 0C10 4.7 10.6 3.7 12 2zM5 8l1.3 12.2A2 2 0 0 0 8.3 22h7.4a2 2 0 0 0 2-1.8L19 8M5.8 14.5h12.4';
/** A measuring jug. */
export const batch =
  'M3 3h13.5v16a2 2 0 0 1-2 2H7a2 2 0 0 1-2-2V6zM16.5 7.5H19a2 2 0 0 1 2 2v4a2 2 0 0 1-2 2h-2.5M5 12h4M5 16.5h4';
/** Three cups, one unlike the others. */
export const blind = 'M8.5 3h7l-1 7h-5zM2.5 14h7l-1 7h-5zM14.5 14h7l-1 7h-5zM17 17.5h2';
/** A drop over the pan of a scale. */
export const calibrate =
  'M12 2c1.6 2 2.5 3.2 2.5 4.5a2.5 2.5 0 0 1-5 0C9.5 5.2 10.4 4 12 2zM4 12.5h16M12 12.5V16M7.5 16h9l2.5 6H5z';
/** A pocket calculator. */
export const lookup =
  'M7 2.5h10a2 2 0 0 1 2 2v15a2 2 0 0 1-2 2H7a2 2 0 0 1-2-2v-15a2 2 0 0 1 2-2zM9 7h6M9 12h.01M12 12h.01M15 12h.01M9 16.5h.01M12 16.5h.01M15 16.5h.01';

/** A bench with a bottle on it. */
export const bench = 'M2.5 13h19M5 13v8M19 13v8M8 13V7.5L9.5 5V3h3v2L14 7.5V13M17.5 13V9';
/** Bottles on two shelves. */
export const shelf = 'M3 10.5h18M3 21h18M5.5 10.5V3H9v7.5M13 10.5V5h3.5v5.5M7.5 21v-5H11v5M15 21v-6.5h3.5V21';
/** A notebook. */
export const book =
  'M7 3h11a1.5 1.5 0 0 1 1.5 1.5v15A1.5 1.5 0 0 1 18 21H7a2.5 2.5 0 0 1-2.5-2.5v-13A2.5 2.5 0 0 1 7 3zM4.5 18.5A2.5 2.5 0 0 1 7 16h12.5M9 8h6';

/** Sliders. */
export const settings =
  'M3 7h9M18 7h3M3 17h3M12 17h9M15 4a3 3 0 1 0 0 6a3 3 0 1 0 0-6zM9 14a3 3 0 1 0 0 6a3 3 0 1 0 0-6z';
/** The brackets of a camera that reads a code. */
export const scan =
  'M3 8V4.5A1.5 1.5 0 0 1 4.5 3H8M16 3h3.5A1.5 1.5 0 0 1 21 4.5V8M21 16v3.5a1.5 1.5 0 0 1-1.5 1.5H16M8 21H4.5A1.5 1.5 0 0 1 3 19.5V16M7 12h10';
/** A tag to be tied or stuck to a vial. */
export const label = 'M2.5 6h13l6 6-6 6h-13zM6.5 10h6M6.5 14h3.5';
export const back = 'M15.5 5l-7 7 7 7';
