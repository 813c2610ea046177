import { list } from '../../records/shelf';

/** 'Scale', 'Scale 2', …: the first name of a kind that none has. */
export function freeName(kind: 'scale' | 'vessel', word: string): string {
  const taken = list(kind).map(({ name }) => name);
  for (let i = 1; ; i++) {
    const name = i === 1 ? word : `${word} ${i}`;
    if (!taken.includes(name)) return name;
  }
}
