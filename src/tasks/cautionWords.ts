import { cautions } from '../tables/cautions';

/** The cautions that a material carries (codes of the table), in words. */
export function cautionWords(codes: readonly string[]): string[] {
  return cautions.filter(({ code }) => codes.includes(code)).map(({ words }) => `${words}.`);
}
