import { cautions } from '../tables/cautions';

/** The cautions that a material carries (codes of the table), in words. */
export function cautionWords(codes: readonly string[]): string[] {
  return cautions.filter(({ code }) => codes.includes(code)).map(({ words }) => `${words}.`);
}

/** Codes of the cautions that a material carries by itself; the others stand wherever neat material is handled. */
export const cautionCodes: readonly string[] = cautions
  .filter(({ when }) => when !== 'always' && when !== 'neat material')
  .map(({ code }) => code);
