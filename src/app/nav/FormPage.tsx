import { useSignal } from '@preact/signals';
import type { ComponentChildren } from 'preact';
import { PageHead } from './PageHead';
import { back } from './route';

interface Props {
  title: string;
  /** Stores; true when it did, and then the page goes. */
  onKeep: () => Promise<boolean>;
  children: ComponentChildren;
}

/** A page of questions with one button at its foot. */
export function FormPage({ title, onKeep, children }: Props) {
  const trouble = useSignal('');
  const tap = async () => {
    try {
      if (await onKeep()) back();
    } catch (error) {
      trouble.value = `The phone could not store this: ${error instanceof Error ? error.message : String(error)}`;
    }
  };
  return (
    <main class="page form">
      <PageHead title={title} />
      {children}
      <footer class="actions">
        {trouble.value && (
          <p class="trouble" role="alert">
            {trouble.value}
          </p>
        )}
        <button class="main" onClick={() => void tap()}>
          Save
        </button>
      </footer>
    </main>
  );
}
