import type { Description } from './description';

/** Label and text side by side, or with long labels one under the other; with where it was read in small under it. */
export function Facts({ facts, stacked = false }: { facts: NonNullable<Description['facts']>; stacked?: boolean }) {
  return (
    <dl class={stacked ? 'facts stacked' : 'facts'}>
      {facts.map(([label, text, source]) => (
        <div>
          <dt>{label}</dt>
          <dd>
            {text}
            {source && <small>{source}</small>}
          </dd>
        </div>
      ))}
    </dl>
  );
}
