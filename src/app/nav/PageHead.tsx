import type { ComponentChildren } from 'preact';
import { BackButton } from '../../ui/BackButton';
import { back } from './route';

/** The head of a page that was opened from another one: the way back there, its title, and its own buttons. */
export function PageHead({ title, children }: { title: string; children?: ComponentChildren }) {
  return (
    <header class="top">
      <BackButton onBack={back} />
      <h1>{title}</h1>
      {children}
    </header>
  );
}
