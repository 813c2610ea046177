import { useSignal } from '@preact/signals';
import type { ComponentChildren } from 'preact';
import { close } from '../../ui/drawn/firstIcons';
import { Icon } from '../../ui/drawn/Icon';

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
      if (await onKeep()) history.back();
    } catch (error) {
      trouble.value = `The phone could not store this: ${error instanceof Error ? error.message : String(error)}`;
    }
  };
  return (
    <main class="page form">
      <header class="top">
        <h1>{title}</h1>
        <button class="round" onClick={() => history.back()} aria-label="Close without changing">
          <Icon of={close} />
        </button>
      </header>
      {children}
      <footer class="actions">
        {trouble.value && (
          <p class="trouble" role="alert">
            {trouble.value}
          </p>
        )}
        <button class="main" onClick={() => void tap()}>
          Keep
        </button>
      </footer>
    </main>
  );
}
