import './scale.css';

interface Props {
  title: string;
  count: number;
  onCount: (count: number) => void;
}

/** A count with one less and one more; never below none. */
export function Stepped({ title, count, onCount }: Props) {
  return (
    <div class="stepped" role="group" aria-label={title}>
      <span>
        {title} <b class="amount">{count}</b>
      </span>
      <button type="button" class="second" aria-label="Less" disabled={count === 0} onClick={() => onCount(count - 1)}>
        −
      </button>
      <button type="button" class="second" aria-label="More" onClick={() => onCount(count + 1)}>
        +
      </button>
    </div>
  );
}
