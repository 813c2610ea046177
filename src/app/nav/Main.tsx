import { createContext, type ComponentChildren } from 'preact';
import { useContext } from 'preact/hooks';

/** Name of the list that a page is beside the page of a thing; null where the page is alone. */
export const Beside = createContext<string | null>(null);

/** The frame of a page that may be a list beside another one: there is one main page on the screen. */
export function Main({
  class: sort,
  children,
  ...rest
}: {
  class: string;
  children: ComponentChildren;
  onPointerDownCapture?: () => void;
}) {
  const name = useContext(Beside);
  if (name === null)
    return (
      <main class={sort} {...rest}>
        {children}
      </main>
    );
  return (
    <section class={sort} aria-label={name} {...rest}>
      {children}
    </section>
  );
}
