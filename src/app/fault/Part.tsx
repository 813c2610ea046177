import type { ComponentChildren } from 'preact';
import { Boundary } from '../../ui/fault/Boundary';
import { FaultNotice } from '../../ui/fault/FaultNotice';
import { PageHead } from '../nav/PageHead';

interface Props {
  /** What it shows: with another one it is tried again. */
  of: unknown;
  children: ComponentChildren;
}

/** A part of a page that may break alone. */
export function Part({ of, children }: Props) {
  return (
    <Boundary
      of={of}
      otherwise={(error, again) => (
        <FaultNotice
          words="Minim could not show this part; nothing that was stored is lost."
          error={error}
          again={again}
        />
      )}
    >
      {children}
    </Boundary>
  );
}

/** A whole page that may break; the Bench, and the tabs where there are any, stay within reach. */
export function GuardedPage({ of, children }: Props) {
  return (
    <Boundary of={of} otherwise={(error, again) => <BrokenPage error={error} again={again} />}>
      {children}
    </Boundary>
  );
}

interface BrokenProps {
  error: unknown;
  again?: () => void;
  title?: string;
  words?: string;
  children?: ComponentChildren;
}

const OF_PAGE = 'Something in Minim went wrong on this page; nothing that was stored is lost.';

/** What is shown in place of a page that broke. */
export function BrokenPage({ error, again = () => {}, title = 'Minim', words = OF_PAGE, children }: BrokenProps) {
  return (
    <main class="page">
      <PageHead title={title} />
      <FaultNotice words={words} error={error} again={again} />
      {children}
    </main>
  );
}
