import type { LabelFace } from '../../core/label/labelContent';

const fonts: Record<LabelFace, string> = {
  plain: "400 %px 'Hyperlegible', sans-serif",
  bold: "700 %px 'Hyperlegible', sans-serif",
  badge: "700 %px 'Hyperlegible', sans-serif",
  code: "700 %px 'Hyperlegible Mono', monospace",
};

/** The font of a face in a size of that many pixels, as a canvas takes it. */
export function fontOf(face: LabelFace, pixels: number): string {
  return fonts[face].replace('%', String(pixels));
}

const MEASURED_AT = 100; // px

/** Loads what labels are set in; then hands back how wide a text is at a size of 1. */
export async function textMeasure(): Promise<(text: string, face: LabelFace) => number> {
  await Promise.all(Object.values(fonts).map((font) => document.fonts.load(font.replace('%', '16'))));
  const canvas = document.createElement('canvas').getContext('2d')!;
  const known = new Map<string, number>();
  return (text, face) => {
    const key = `${face} ${text}`;
    const before = known.get(key);
    if (before !== undefined) return before;
    canvas.font = fontOf(face, MEASURED_AT);
    const width = canvas.measureText(text).width / MEASURED_AT;
    known.set(key, width);
    return width;
  };
}
