/* Icons of what can be done, drawn as those of the Bench (firstIcons.ts). */

export const close = 'M5.5 5.5l13 13M18.5 5.5l-13 13';
export const more =
  'M5 11.5a.5.5 0 1 0 0 1a.5.5 0 1 0 0-1zM5 12h.01M12 11.5a.5.5 0 1 0 0 1a.5.5 0 1 0 0-1zM12 12h.01M19 11.5a.5.5 0 1 0 0 1a.5.5 0 1 0 0-1zM19 12h.01';
export const search = 'M10.5 4a6.5 6.5 0 1 0 0 13a6.5 6.5 0 1 0 0-13zM15.3 15.3 20 20';
/** A printer. */
export const print =
  'M7 8V3h10v5M7 17H5a2 2 0 0 1-2-2v-5a2 2 0 0 1 2-2h14a2 2 0 0 1 2 2v5a2 2 0 0 1-2 2h-2M7 14h10v7H7z';
export const undo = 'M8.5 4 3.5 9l5 5M3.5 9H15a5.5 5.5 0 0 1 0 11H9';
export const check = 'M4 12.5l5.5 5.5L20 6.5';
export const add = 'M12 4v16M4 12h16';
/** A loudspeaker: the count said aloud. */
export const voice = 'M3 9.5v5h3.5L11.5 19V5L6.5 9.5zM15 9a4.2 4.2 0 0 1 0 6M17.8 6a8.5 8.5 0 0 1 0 12';
/** A scale with its display. */
export const weigh = 'M4 4h16M12 4v4.5M6 8.5h12l3 11.5H3zM9.5 14.5h5';
export const camera =
  'M4.5 7.5h3L9.5 4.5h5l2 3h3a2 2 0 0 1 2 2v8a2 2 0 0 1-2 2h-15a2 2 0 0 1-2-2v-8a2 2 0 0 1 2-2zM12 10a3.5 3.5 0 1 0 0 7a3.5 3.5 0 1 0 0-7z';
