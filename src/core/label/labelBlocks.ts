import type { LabelContent, LabelFrame } from './labelContent';

/** A square of a label, mm from its top left corner. */
export interface PlacedSquare {
  readonly x: number;
  readonly y: number;
  readonly side: number;
}

/** The modules of a QR code without the white around them: `module` mm, that is `dots` printer dots, to each. */
export interface PlacedCode extends PlacedSquare {
  readonly module: number;
  readonly dots: number;
}

/** One way to place the code and the flame; text keeps clear of both. Rings, so many, lie at the foot of the rest. */
export interface Blocks {
  readonly code: PlacedCode | null;
  readonly flame: PlacedSquare | null;
  readonly rings: number;
}

/** A bar of a label, mm from its top left corner. */
export interface PlacedBar {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

const QUIET = 4; // modules of white all around a QR code (printer manuals)
const MODULE = 0.5; // mm, no larger (our choice: 4 dots at 203 dpi, 6 at 300 dpi; the code's inventor advises 4 and more)
const FEWEST_DOTS = 3; // to a module: a 12 mm label takes no more at 203 dpi
const FLAMES = [10, 8, 6.5, 5, 4]; // mm, sides tried; 10 mm is the smallest of CLP Annex I 1.2.1 for what is sold
const GAP = 0.3; // mm between flame and edge or code
const FOR_TEXT = 1 / 3; // of the width always stays for text (our choice)

/** Dots per mm of a printer. `dpi` in dots per inch, above 0; by definition an inch is 25.4 mm. */
export function dotsPerMm(dpi: number): number {
  return dpi / 25.4;
}

/** A code with its quiet zone, mm: four modules of white on all sides. Source: handbooks of makers of code readers and printers (ISO/IEC 18004 was not read). */
export function withQuiet(code: PlacedCode): PlacedSquare {
  const quiet = QUIET * code.module;
  return { x: code.x - quiet, y: code.y - quiet, side: code.side + 2 * quiet };
}

const RING = 0.4; // mm, our choice: 3 dots at 203 dpi
const RING_PITCH = 0.9; // mm, our choice: far enough apart to be counted
const RING_EDGE = 0.5; // mm under the lowest and left of all

/** Room that rings take at the foot, mm. Our choice of sizes; arithmetic. */
export function ringsHeight(rings: number): number {
  return rings === 0 ? 0 : RING_EDGE + (rings - 1) * RING_PITCH + RING;
}

/** Rings at the foot of a label, from its left edge to its code or flame, one bar for each tenfold step; mm. Our own; arithmetic. */
export function placeRings({ code, flame, rings }: Blocks, { widthMm, heightMm }: LabelFrame): PlacedBar[] {
  const top = heightMm - ringsHeight(rings);
  const beside = [code && withQuiet(code), flame && { ...flame, x: flame.x - GAP }].flatMap((block) => block ?? []);
  const ends = beside.filter(({ y, side }) => y + side > top).map(({ x }) => x);
  const width = Math.min(widthMm - RING_EDGE, ...ends) - RING_EDGE;
  return Array.from({ length: rings }, (_, i) => ({ x: RING_EDGE, y: top + i * RING_PITCH, width, height: RING }));
}

/**
 * Ways to place code and flame on a label, the largest code first; without the code where no size of it fits, without the
 * flame where no way has room for it. mm and dots per inch.
 * Source: our own order; dots to a module after the guidance of the code’s inventors, the flame's side after CLP Annex I 1.2.1.
 */
export function blocksFor({ codeModules, flame }: LabelContent, frame: LabelFrame): Blocks[] {
  const fitting = codeModules === null ? [] : codesFor(codeModules, frame);
  const codes: (PlacedCode | null)[] = fitting.length > 0 ? fitting : [null];
  const burning = codes.flatMap((code) =>
    FLAMES.flatMap((side) =>
      (flame ? flamesAt(side, code, frame) : []).map((placed) => ({ code, flame: placed, rings: 0 })),
    ),
  );
  return burning.length > 0 ? burning : codes.map((code) => ({ code, flame: null, rings: 0 }));
}

/** The code at the lower right, its corner on a dot, in all sizes of whole dots that fit, the largest first. */
function codesFor(modules: number, { widthMm, heightMm, dpi }: LabelFrame): PlacedCode[] {
  const perMm = dotsPerMm(dpi);
  const most = Math.max(FEWEST_DOTS, Math.round(MODULE * perMm));
  const wide = Math.floor(widthMm * perMm + 1e-9);
  const high = Math.floor(heightMm * perMm + 1e-9);
  return Array.from({ length: most - FEWEST_DOTS + 1 }, (_, i) => most - i).flatMap((dots) => {
    const outer = (modules + 2 * QUIET) * dots;
    if (outer > high || outer > wide * (1 - FOR_TEXT)) return [];
    const [x, y] = [(wide - outer + QUIET * dots) / perMm, (high - outer + QUIET * dots) / perMm];
    return [{ x, y, side: (modules * dots) / perMm, module: dots / perMm, dots }];
  });
}

/** Places of the flame: on top of the code at the right, or left of it at the foot; those that fit. */
function flamesAt(side: number, code: PlacedCode | null, { widthMm, heightMm }: LabelFrame): PlacedSquare[] {
  const outer = code ? withQuiet(code) : { x: widthMm - GAP, y: heightMm, side: 0 };
  const above = { x: widthMm - GAP - side, y: outer.y - side, side };
  const beside = { x: outer.x - side, y: heightMm - GAP - side, side };
  return [...(code ? [above] : []), beside].filter(({ x, y }) => y >= GAP && x >= widthMm * FOR_TEXT);
}
