import { withLocalSigns } from '../ui/format';

/** What cannot be worked out, in one sentence. */
export interface Refusal {
  problem: string;
}

/** Does the work, or hands back the one sentence that a core function refuses with. Any other error goes on. */
export function attempt<T>(work: () => T): T | Refusal {
  try {
    return work();
  } catch (error) {
    if (error instanceof RangeError) return { problem: sentence(error.message) };
    throw error;
  }
}

/** A capital at the beginning, a full stop at the end, and numbers as the phone writes them. */
export function sentence(raw: string): string {
  const words = withLocalSigns(raw);
  return `${words.charAt(0).toUpperCase()}${words.slice(1)}${/[.!?]$/.test(words) ? '' : '.'}`;
}
