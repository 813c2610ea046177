import type { Description } from './description';

/** Label and text side by side, with where it was read in small under it. */
export function Facts({ facts }: { facts: NonNullable<Description['facts']> }) {
  return (
    <dl class="facts">
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
