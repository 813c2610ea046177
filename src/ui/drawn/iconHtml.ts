/** The box that all icons are drawn in. */
export const ICON_BOX = '0 0 24 24';

/** An icon as text, as Icon.tsx draws it: for the Bench that stands in the page before any script runs. */
export function iconHtml(of: string): string {
  return `<svg class="icon" viewBox="${ICON_BOX}" aria-hidden="true"><path d="${of}"/></svg>`;
}
