import type { ComponentChildren } from 'preact';
import './drawn.css';

/** How large a thing is drawn: its height in px, or 'fill' for the room that it is given. */
export type DrawnSize = number | 'fill';

interface Props {
  width: number;
  height: number;
  size: DrawnSize;
  title: string | undefined;
  class: string;
  children: ComponentChildren;
}

/** The sheet that a thing is drawn on, in units of its own. Decoration, unless it has a title. */
export function Drawing({ width, height, size, title, class: sort, children }: Props) {
  const box =
    size === 'fill' ? { width: '100%', height: '100%' } : { width: round((size * width) / height), height: size };
  const told = title === undefined ? { 'aria-hidden': true } : { role: 'img' as const, 'aria-label': title };
  return (
    <svg class={`drawn ${sort}`} viewBox={`0 0 ${width} ${height}`} {...box} {...told}>
      {children}
    </svg>
  );
}

const FILLS_PX = 400; // about the height of what fills a phone

/** Lines and letters of a drawing at its size: px of a unit, and lines that are neither hair nor bar at any size, in units. */
export interface Pen {
  readonly pxPerUnit: number;
  readonly line: number;
  readonly fine: number;
  /** Whether there is no room for letters, ridges and marks. */
  readonly tiny: boolean;
}

/** The pen for a drawing `height` units high. */
export function penFor(size: DrawnSize, height: number): Pen {
  const px = size === 'fill' ? FILLS_PX : size;
  const pxPerUnit = px / height;
  const linePx = px < 60 ? 1.5 : px < 130 ? 2 : 2.5;
  return { pxPerUnit, line: round(linePx / pxPerUnit), fine: round(linePx / 2 / pxPerUnit), tiny: px < 60 };
}

/** Two decimals are finer than a screen. */
export function round(value: number): number {
  return Math.round(100 * value) / 100;
}
