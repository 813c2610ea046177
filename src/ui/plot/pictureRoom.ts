/** The size of letters that the person chose, CSS px; 16 is usual. */
function letters(): number {
  return parseFloat(getComputedStyle(document.documentElement).fontSize);
}

/** How large letters in a picture are against the usual: 2 at 200 % text. */
export function letterScale(): number {
  return letters() / 16;
}

/** Room between the edges of a page, CSS px. A picture drawn this wide has letters as large as it says. */
export function pageRoom(): number {
  return Math.min(innerWidth, 34 * letters()) - 2 * letters(); // base.css: #app, .page
}
