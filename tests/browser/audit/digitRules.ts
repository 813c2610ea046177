/** What is wrong with the digits of a text, one sentence each; the rules of how numbers are shown (src/ui/format.ts). */
export function digitFaults(text: string): string[] {
  const plain = text
    .replace(/[‹›\u2068\u2069]/g, '')
    .replace(/[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}/g, 'id')
    .replace(/[\u00a0\u202f\u2009]/g, ' ')
    .replace(SHORT_ID, 'id');
  return rules.flatMap(({ of, pattern, wrong, except = [] }) =>
    except.some(({ words }) => words.test(plain))
      ? []
      : [...plain.matchAll(pattern)].filter((match) => wrong(match)).map(([found]) => `${of}: ${found}`),
  );
}

/** On a label: two times four signs (records/kind/shortId.ts), one of them a letter that no number has. */
const SHORT_ID = /(?<!\S)(?=[2-9A-Z]{0,3}[A-DF-Z]|[2-9A-Z]{4} [2-9A-Z]{0,3}[A-DF-Z])[2-9A-Z]{4} [2-9A-Z]{4}(?![\w.])/g;

interface Rule {
  readonly of: string;
  readonly pattern: RegExp;
  readonly wrong: (match: RegExpMatchArray) => boolean;
  /** Texts that it does not hold for, each with the reason. */
  readonly except?: readonly { readonly words: RegExp; readonly because: string }[];
}

const UNIT = /(?:mg\/kg|mg\/L|ppm|mg|mL|g|%)(?![\w/])/.source;
const NUMBER = /\d+(?:[.,]\d+)?/.source;

const rules: readonly Rule[] = [
  {
    of: 'an exponent',
    pattern: /\d[.,]?\d*e[+-]?\d+\b|[×x] ?10(?:\^|[⁰¹²³⁴-⁹⁻])/gi,
    wrong: ([found]) => !/^\d{1,3}E\d{3}/.test(found) || found.includes('-'), // E 1520 is an additive
  },
  {
    of: 'the noise of a binary fraction',
    pattern: /\d[.,]\d{9,}/g,
    wrong: () => true,
    except: [
      { words: /The chance, in full/, because: 'a chance of 1 in 6 to the 6th was counted, all its digits are meant' },
    ],
  },
  {
    of: 'digits that the ± does not leave',
    pattern: new RegExp(`([−-]?${NUMBER}) ± (${NUMBER})`, 'g'),
    wrong: ([, value, uncertainty]) => decimals(value!) !== decimals(uncertainty!) || tooFine(uncertainty!),
  },
  {
    of: 'five digits and more',
    pattern: new RegExp(`(?<![\\d.,–])(${NUMBER})(?: ± (${NUMBER}))?\\)? ?(${UNIT})`, 'g'),
    wrong: ([, number, uncertainty, unit]) => significant(number!) > 4 && !isReadOff(uncertainty, unit!),
    except: [
      {
        words: /planned|weigh|scale|into the (syrup|drink)|exactly/i,
        because: 'a weighing is read off a scale',
      },
    ],
  },
  {
    of: 'nothing, to weigh',
    pattern: /(?<![\d.,± ]|± )0[.,]0+ ?(?:g|mg|mL)(?![\w/])|(?<=[^±] |^)0[.,]0+ ?(?:g|mg|mL)(?![\w/])/g,
    wrong: () => true,
  },
];

function decimals(number: string): number {
  return /[.,](\d+)$/.exec(number)?.[1]!.length ?? 0;
}

/** A weighing has all digits that its scale shows: its ± is one or two of the last place. */
function isReadOff(uncertainty: string | undefined, unit: string): boolean {
  return unit === 'g' && /^0?[.,]?0*[12]$/.test(uncertainty ?? '');
}

/** Significant digits; zeros at the end of a whole number do not count. */
function significant(number: string): number {
  const digits = number.replace(/[.,]/, '').replace(/^0+/, '');
  return /[.,]/.test(number) ? digits.length : digits.replace(/0+$/, '').length;
}

/** More than one digit, or than two where the first is 1 or 2. */
function tooFine(uncertainty: string): boolean {
  const digits = uncertainty.replace(/[.,]/, '').replace(/^0+/, '');
  const count = /[.,]/.test(uncertainty) ? digits.length : digits.replace(/0+$/, '').length;
  return count > (/^[12]/.test(digits) ? 2 : 1);
}

/** The amounts in g of a weighing step that are finer than its scale (the steps that may be on it, g). */
export function finerThanScale(say: string, steps: readonly number[]): string[] {
  const finest = Math.max(...steps.map((step) => Math.max(0, Math.ceil(-Math.log10(step) - 1e-9))));
  const found = [...say.replace(/[‹›]/g, '').matchAll(new RegExp(`(${NUMBER}) g(?![\\w/])`, 'g'))];
  return found.filter(([, number]) => decimals(number!) > finest).map(([text]) => `finer than the scale: ${text}`);
}

/** All that can be read on the page: lines of text, results with their ±, values of fields, labels, names for a voice. Runs in the page. */
export function everythingRead(): string[] {
  const all = (selector: string) => [...document.querySelectorAll(selector)];
  const results = all('.result').map((result) => {
    const [value, unit, how] = ['b', '.unit', '.how'].map(
      (part) => result.querySelector(part)?.textContent?.trim() ?? '',
    );
    const uncertainty = /± ([\d.,]+)/.exec(how!)?.[1];
    return uncertainty ? `${value} ± ${uncertainty} ${unit}` : `${value} ${unit}`;
  });
  const fields = all('input, textarea, select').flatMap((field) => {
    const { value, name, type } = field as HTMLInputElement;
    return value && !['radio', 'checkbox', 'date'].includes(type) ? [`${name} = ${value}`] : [];
  });
  const cells = all('tr').map((row) => (row as HTMLElement).innerText.replace(/\s+/g, ' '));
  const rest = all('[aria-label], svg text').map((one) => one.getAttribute('aria-label') ?? one.textContent ?? '');
  return [...document.body.innerText.split('\n'), ...results, ...fields, ...cells, ...rest]
    .map((text) => text.trim())
    .filter((text) => /\d/.test(text));
}
