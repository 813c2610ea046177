import type { ComponentChild, VNode } from 'preact';

/** The markup of what is drawn by components without state of their own, as a browser would be given it. */
export function markup(node: unknown): string {
  if (Array.isArray(node)) return node.map(markup).join('');
  if (node === null || node === undefined || typeof node === 'boolean') return '';
  if (typeof node !== 'object') return String(node);
  const { type, props } = node as VNode<{ children?: ComponentChild }>;
  if (typeof type === 'function') return markup((type as (props: unknown) => unknown)(props));
  const { children, ...attributes } = props as Record<string, unknown>;
  const written = Object.entries(attributes)
    .filter(([, value]) => value !== undefined && value !== false)
    .map(([name, value]) => ` ${name}="${typeof value === 'object' ? JSON.stringify(value) : String(value)}"`);
  const inside = markup(children);
  return inside ? `<${type}${written.join('')}>${inside}</${type}>` : `<${type}${written.join('')}/>`;
}

/** What is written in a drawing, piece by piece. */
export function writing(drawn: string): string[] {
  return [...drawn.matchAll(/<text[^>]*>([^<]*)<\/text>/g)].map((match) => match[1]!);
}
