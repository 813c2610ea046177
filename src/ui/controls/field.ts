/** One of the answers that a choice offers. */
export interface Option<V extends string = string> {
  value: V;
  label: string;
  hint?: string;
  /** Stands there whatever is searched for among many. */
  always?: boolean;
}

/** What a question shows of itself. */
export interface FieldFacts {
  name: string;
  title: string;
  unit?: string;
  help?: string;
  input: 'decimal' | 'numeric' | 'text' | 'date' | 'choice';
  options?: readonly Option[];
}
