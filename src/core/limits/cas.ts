/**
 * A CAS registry number as it is usually written, from what was typed: spaces gone, any dash a hyphen, and hyphens put in where
 * only digits were typed (7786610 → 7786-61-0): common practice. Makes no check; what is no such number comes back trimmed.
 */
export function tidyCas(text: string): string {
  const tidy = text
    .trim()
    .replace(/[‐‑‒–—−]/g, '-')
    .replace(/\s+/g, '');
  const digits = /^(\d{2,7})(\d{2})(\d)$/.exec(tidy);
  return digits ? `${digits[1]}-${digits[2]}-${digits[3]}` : tidy;
}

/**
 * What is wrong with a CAS registry number, in one sentence; null when its form and its check digit are right. Takes any text.
 * Form: 2 to 7 digits, 2 digits, check digit. The check digit is the last digit of the sum of all digits before it, each times
 * its place counted from the right. Source: the registry's rule (from memory); it holds for every number of the catalogue,
 * which stand in the EU list or the FDA inventory. Check: 7732-18-5 is right, 7732-18-4 is not.
 */
export function casProblem(text: string): string | null {
  const cas = tidyCas(text);
  const parts = /^(\d{2,7})-(\d{2})-(\d)$/.exec(cas);
  if (!parts) return `A CAS number looks like 5989-27-5, not like “${text.trim()}”.`;
  const sum = [...`${parts[1]}${parts[2]}`].reverse().reduce((all, digit, i) => all + Number(digit) * (i + 1), 0);
  return sum % 10 === Number(parts[3]) ? null : `The check digit of ${cas} does not fit: one digit is mistyped.`;
}
