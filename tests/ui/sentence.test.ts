import { afterEach, expect, test, vi } from 'vitest';
import { sentence } from '../../src/core/text/refusal';

/** Reads sentence.ts as a browser of that language would. */
async function inLanguage(language: string) {
  vi.resetModules();
  vi.stubGlobal('document', {});
  vi.stubGlobal('navigator', { language });
  const { forFile } = await import('../../src/ui/format');
  return { forFile, ...(await import('../../src/ui/sentence')) };
}

afterEach(() => vi.unstubAllGlobals());

const heavy = sentence('drops of {mg} mg, within 45 to {most} mg (Ph. Eur. 2.1.1)', {
  mg: { value: 51.24, decimals: 1 },
  most: 55.5,
});

test('numbers have the decimal sign of the phone, and numbers of chapters stay', async () => {
  const german = await inLanguage('de-DE');
  expect(german.sentenceWords(heavy)).toBe('drops of 51,2 mg, within 45 to 55,5 mg (Ph. Eur. 2.1.1)');
  expect(german.forFile(() => german.sentenceWords(heavy))).toContain('51.2 mg, within 45 to 55.5 mg');
  const english = await inLanguage('en-US');
  expect(english.sentenceWords(heavy)).toBe('drops of 51.2 mg, within 45 to 55.5 mg (Ph. Eur. 2.1.1)');
});

test('numbers are as they were given, or rounded as far as the sentence asks', async () => {
  const { sentenceWords } = await inLanguage('de-DE');
  const numbers = {
    given: 0.1 + 0.2,
    digits: { value: 1234.567, digits: 3 },
    below: { value: -1.5, decimals: 2 },
    zeros: { value: 2, figures: 3 },
  };
  expect(sentenceWords(sentence('{given}, {digits}, {below}, {zeros}', numbers))).toBe('0,3, 1230, −1,50, 2,00');
});

test('things have the name that the person gave them, else the one of core, else their id', async () => {
  const { refusalWords } = await inLanguage('en-GB');
  const lacking = sentence('{vial} has no mass of {line}, nor has {other}', {
    vial: { id: 'v1', name: 'x' },
    line: { id: 'c-1.5', name: 'Citral 1.5 %' },
    other: { id: 'v2' },
  });
  expect(refusalWords(lacking, (id) => (id === 'v1' ? 'CI-10' : undefined))).toBe(
    'CI-10 has no mass of Citral 1.5 %, nor has v2.',
  );
});

test('a refusal begins with a capital and ends in one full stop', async () => {
  const { refusalWords } = await inLanguage('en-GB');
  expect(refusalWords(sentence('a mass is zero or more'))).toBe('A mass is zero or more.');
  expect(refusalWords(sentence('Is this all?'))).toBe('Is this all?');
  expect(refusalWords(sentence('That is all.'))).toBe('That is all.');
});
