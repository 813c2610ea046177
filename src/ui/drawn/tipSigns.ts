/* Signs on the tips of strips: each says without colour what the colour says. Within 8 of 0, 0, filled. */

/** The signs, by name. */
export const tipSigns = {
  disc: 'M-5.5 0a5.5 5.5 0 1 0 11 0a5.5 5.5 0 1 0-11 0Z',
  ring: 'M-6.5 0a6.5 6.5 0 1 0 13 0a6.5 6.5 0 1 0-13 0ZM-3.2 0a3.2 3.2 0 1 1 6.4 0a3.2 3.2 0 1 1-6.4 0Z',
  triangle: 'M0-7L6.5 4.5H-6.5Z',
  wedge: 'M0 7L6.5-4.5H-6.5Z',
  square: 'M-5-5H5V5H-5Z',
  diamond: 'M0-7.5L6 0L0 7.5L-6 0Z',
  plus: 'M-2-7H2V-2H7V2H2V7H-2V2H-7V-2H-2Z',
  bars: 'M-6-5.5H6V-1.5H-6ZM-6 1.5H6V5.5H-6Z',
  posts: 'M-5.5-6H-1.5V6H-5.5ZM1.5-6H5.5V6H1.5Z',
  hourglass: 'M-5.5-6.5H5.5L1.5 0L5.5 6.5H-5.5L-1.5 0Z',
} as const;

export type TipSign = keyof typeof tipSigns;
