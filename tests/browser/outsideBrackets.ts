/** Texts of the page that stand outside brackets, in one line each; runs inside the page. */
export function outsideBrackets(): string[] {
  const texts: string[] = [];
  const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  for (let node = walker.nextNode(); node; node = walker.nextNode())
    if (node.parentElement!.checkVisibility()) texts.push(node.textContent ?? '');
  for (const name of ['aria-label', 'title', 'alt', 'placeholder'])
    for (const element of document.querySelectorAll(`[${name}]`)) texts.push(element.getAttribute(name)!);
  return texts
    .join('\n')
    .replaceAll('\u00a0', ' ')
    .replace(/⟦[^⟦⟧]*⟧/g, ' ')
    .split('\n'); // an instruction is cut where its amounts stand out
}
