import { HEDONIC_WORDS } from '../../core/sensory/hedonic';
import './scale.css';

interface Props {
  /** The number that is chosen, null while there is none. */
  chosen: number | null;
  /** The number that is touched, as text; '' for the chosen one, which is taken back. */
  onChoose: (text: string) => void;
}

/** How it is liked, 1 to 9, in three rows: disliked, in between, liked. The same wherever liking is asked. */
export function Liking(props: Props) {
  return <Numbers {...props} title="Liking" numbers={from(1, 9)} words={likingWords} columns={3} told={ENDS} />;
}

/** An own question, answered 1 to 9: not at all, to completely. */
export function OwnScale({ title, ...props }: Props & { title: string }) {
  return <Numbers {...props} title={title} numbers={from(1, 9)} words={closenessWords} columns={3} told={ENDS} />;
}

/** The numbers whose words are written under them: both ends and the middle. */
const ENDS = [1, 5, 9];

/** How strong it is, 0 to 10. */
export function Strength(props: Props) {
  return <Numbers {...props} title="Strength" numbers={from(0, 10)} words={strengthWords} columns={6} />;
}

interface NumbersProps extends Props {
  title: string;
  numbers: readonly number[];
  /** What a number says, in words. */
  words: (n: number) => string;
  columns: number;
  /** Numbers that show their words. */
  told?: readonly number[];
}

function Numbers({ chosen, onChoose, title, numbers, words, columns, told = [] }: NumbersProps) {
  return (
    <fieldset class="scale">
      <legend class="title">
        {title} {chosen !== null && <span class="amount">{`${chosen}, ${words(chosen)}`}</span>}
      </legend>
      <div class="numbers" style={{ '--columns': columns }}>
        {numbers.map((n) => (
          <button
            type="button"
            class={n === chosen ? 'point chosen' : 'point'}
            aria-pressed={n === chosen}
            aria-label={told.includes(n) ? undefined : `${n}, ${words(n)}`}
            onClick={() => onChoose(n === chosen ? '' : String(n))}
          >
            {n}
            {told.includes(n) && (
              <>
                <span class="pause">, </span>
                <small>{words(n)}</small>
              </>
            )}
          </button>
        ))}
      </div>
    </fieldset>
  );
}

function from(first: number, last: number): number[] {
  return Array.from({ length: last - first + 1 }, (_, i) => first + i);
}

/** Strength 0 to 10 in words; our choice. */
export function strengthWords(n: number): string {
  if (n === 0) return 'nothing';
  return n <= 2 ? 'faint' : n <= 4 ? 'weak' : n <= 6 ? 'clear' : n <= 8 ? 'strong' : 'overpowering';
}

/** An answer to an own question, 1 to 9, in words; our choice. */
export function closenessWords(n: number): string {
  if (n === 1) return 'not at all';
  if (n === 9) return 'completely';
  return n <= 3 ? 'hardly' : n <= 5 ? 'half way' : n <= 7 ? 'nearly' : 'very nearly';
}

/** A point of the nine-point hedonic scale in words. */
export function likingWords(n: number): string {
  return HEDONIC_WORDS[n - 1] ?? '';
}
