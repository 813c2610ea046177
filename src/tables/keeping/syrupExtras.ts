import { bufferSalts, vitaminC } from './acidity';
import { sweeteners } from './sweeteners';

/** What may go into a syrup beside sugar, acid and preservatives, with the name it is weighed under. */
export const syrupExtras: readonly { readonly id: string; readonly name: string; readonly cas: string }[] = [
  ...bufferSalts,
  vitaminC,
  ...sweeteners,
];
