const LONGEST = 6; // letters or digits, as on strips
const SKIPPED = /^(?:oil|of|de|the|and|alpha|beta|gamma|delta|cis|trans|unspecified|expressed|type|\p{L}|\d+)$/u;

/**
 * A code of 4 to 6 capitals and digits for a name, free of those that are taken (capitals): the beginning of its word, or of its
 * first two words; a digit is added while it is taken. Any text; a name without letters gives "MAT". Our choice, not a standard.
 */
export function shortCode(name: string, taken: readonly string[]): string {
  const plain = name.toLowerCase().normalize('NFD').replace(/\p{M}/gu, '');
  const all = plain.match(/\p{L}+/gu) ?? [];
  const words = all.filter((word) => !SKIPPED.test(word));
  const [first = all[0] ?? 'mat', second] = words;
  const base = (second ? first.slice(0, 2) + second.slice(0, 2) : first.slice(0, 4)).toUpperCase();
  return freeCode(base.length < 2 ? `${base}X` : base, (code) => taken.includes(code));
}

/** The same with a number behind it while it is taken: PGF, PGF2, PGF3 …; with a letter where it ends with a digit: HEX32 would be another number. */
function freeCode(stem: string, isTaken: (code: string) => boolean): string {
  return /\d$/.test(stem) ? lettered(stem, isTaken) : withMore(stem, isTaken, String);
}

/**
 * A code (1 to 6 letters or digits) with a letter behind it while it is taken, from the 27th on a number; never longer than 6: CARD,
 * CARDB, CARDC … A vial's strength follows its code, so that a digit there would be misread. Our choice.
 */
export function lettered(stem: string, isTaken: (code: string) => boolean): string {
  return withMore(stem, isTaken, (n) => (n <= 26 ? String.fromCharCode(64 + n) : String(n)));
}

function withMore(stem: string, isTaken: (code: string) => boolean, moreOf: (n: number) => string): string {
  for (let n = 1; ; n++) {
    const more = moreOf(n);
    const code = n === 1 ? stem : `${stem.slice(0, LONGEST - more.length)}${more}`;
    if (!isTaken(code)) return code;
  }
}
