import type { ComponentChildren } from 'preact';
import { useSignal } from '@preact/signals';
import { formatCount } from '../../ui/format';

const PAGE = 60; // drawn at first, and more with each tap

interface Props<T> {
  all: readonly T[];
  row: (one: T) => ComponentChildren;
}

/** A list of which a long one is drawn a page at a time. */
export function InPages<T>({ all, row }: Props<T>) {
  const shown = useSignal(PAGE);
  return (
    <>
      <ul class="list">{all.slice(0, shown.value).map(row)}</ul>
      {all.length > shown.value && (
        <button class="second all" onClick={() => (shown.value += PAGE)}>
          Show more ({formatCount(all.length - shown.value)})
        </button>
      )}
    </>
  );
}
