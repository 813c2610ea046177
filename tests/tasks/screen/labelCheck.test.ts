import { describe, expect, test } from 'vitest';
import { takeIn } from '../../../src/records/shelf';
import { codeTextOf, shortIdOf } from '../../../src/records/kind/shortId';
import { freshRun } from '../../../src/tasks/engine/fold';
import { labelVerdict, meaningOf } from '../../../src/tasks/screen/LabelCheck';
import type { Step } from '../../../src/tasks/engine/task';
import { vialRecord } from '../../browser/benchRecords';

const card = vialRecord({ code: 'CARD', name: 'cardamom oil' });
const hex = vialRecord({ code: 'HEX3', name: 'cis-3-hexenol' });
takeIn([card, hex]);

const step: Step = {
  key: 'count.1',
  say: 'Take ‹CARD 1 %›.',
  pad: { counter: 'drops.1', target: 3, live: () => '', expects: { id: card.id, tag: 'CARD 1 %' } },
};
const scanned = (id: string) => ({ ...freshRun, typed: { 'label.count.1': id } });

describe('the label of what is in the hand', () => {
  test('is right, wrong, or not looked at', () => {
    expect(labelVerdict(freshRun, step)).toBe('unknown');
    expect(labelVerdict(scanned(card.id), step)).toBe('right');
    expect(labelVerdict(scanned(hex.id), step)).toBe('wrong');
    expect(labelVerdict(scanned(''), step)).toBe('unknown');
  });

  test('does not matter where no certain vial is expected', () => {
    const { expects: _, ...pad } = step.pad!;
    expect(labelVerdict(scanned(hex.id), { ...step, pad })).toBe('unknown');
  });

  test('is told from its code alone; a foreign code is never looked into', () => {
    const seen: string[] = [];
    const tell = (text: string) => meaningOf(text, (id) => (seen.push(id), ''));
    expect(tell(codeTextOf(shortIdOf(card.id)))).toBe('');
    expect(tell('https://example.com/')).toBe('That is not a label of Minim.');
    expect(tell('M:ABCDEFGH')).toBe('Nothing on this Shelf has that label.');
    expect(seen).toEqual([card.id]);
  });
});
