/** A made-up translation in which every piece of text between two holes stands in brackets: what stands outside was not translated. */
export function inBrackets(patterns: readonly string[]): Record<string, string> {
  const marked = (pattern: string) =>
    pattern
      .split(/(\{\w+\})/)
      .map((part, i) => (i % 2 === 1 || part === '' ? part : `⟦${part}⟧`))
      .join('');
  return Object.fromEntries(patterns.map((pattern) => [pattern, marked(pattern)]));
}
