import { kindNamed } from '../../records/kind/kinds';
import type { Stored } from '../../records/kind/record';

const LONGEST = 60; // letters of a name that no one has checked

/** What a record that cannot be read is called: its kind and, as far as it has them, its code and its name or lot; else its id. */
export function unreadName(raw: Stored): string {
  const { code, name, title, lot } = raw as unknown as Record<string, unknown>;
  const texts = [code, name ?? title ?? lot].filter((text) => typeof text === 'string' && text.trim() !== '');
  const words = texts.length > 0 ? texts.join(' ') : raw.id;
  return `${kindNamed(raw.kind)?.words.one ?? raw.kind} · ${words.slice(0, LONGEST)}`;
}
