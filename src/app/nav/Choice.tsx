import { useId } from 'preact/hooks';
import { FieldInput } from '../../ui/controls/FieldInput';

interface Props<T extends string> {
  title: string;
  value: T;
  options: Record<T, string>;
  help?: string;
  onChoose: (value: T) => void;
}

/** A choice among the settings. */
export function Choice<T extends string>({ title, value, options, help = '', onChoose }: Props<T>) {
  const listed = Object.entries<string>(options).map(([value, words]) => ({ value, label: words }));
  const field = { name: useId(), title, help, input: 'choice' as const, options: listed };
  return <FieldInput field={field} text={value} problem={undefined} onText={(text) => onChoose(text as T)} />;
}
