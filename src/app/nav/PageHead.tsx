import type { ComponentChildren } from 'preact';
import { usePageTitle } from '../../ui/controls/usePageTitle';
import { BackButton } from '../../ui/BackButton';
import { back } from './route';

/** The head of a page that was opened from another one: the way back there, its title, and its own buttons. */
export function PageHead({ title, children }: { title: string; children?: ComponentChildren }) {
  usePageTitle(title);
  return (
    <header class="top">
      <BackButton onBack={back} />
      <h1>{title}</h1>
      {children}
    </header>
  );
}
