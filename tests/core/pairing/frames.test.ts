import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fromBase45, toBase45 } from '../../../src/core/pairing/base45';
import { checksum } from '../../../src/core/pairing/checksum';
import { framed, frameReader } from '../../../src/core/pairing/frames';

const bytes = (text: string) => new TextEncoder().encode(text);

/** Examples of RFC 9285, chapter 4. */
test.each([
  ['AB', 'BB8'],
  ['Hello!!', '%69 VD92EX0'],
  ['base-45', 'UJCLQE7W581'],
  ['ietf!', 'QED8WEX0'],
])('%j is %j in 45 signs', (text, coded) => {
  expect(toBase45(bytes(text))).toBe(coded);
  expect(fromBase45(coded)).toEqual(bytes(text));
});

test.each(['GGW', 'a', ':::', 'ZZ'])('%j stands for no bytes', (text) => {
  expect(() => fromBase45(text)).toThrow('not the code');
});

test('the checksum has its published check value', () => {
  expect(checksum(bytes('123456789'))).toBe(0xcbf43926);
});

describe('messages in a stream', () => {
  test('come out whole and in order, however the stream is cut', () => {
    fc.assert(
      fc.property(
        fc.array(fc.uint8Array({ maxLength: 60 }), { maxLength: 8 }),
        fc.array(fc.integer({ min: 1, max: 17 }), { minLength: 1, maxLength: 9 }),
        (messages, cuts) => {
          const stream = Uint8Array.from(messages.flatMap((message) => [...framed(message)]));
          const read = frameReader();
          const got: number[][] = [];
          for (let at = 0, i = 0; at < stream.length; at += cuts[i++ % cuts.length]!)
            got.push(...read(stream.slice(at, at + cuts[i % cuts.length]!)).map((message) => [...message]));
          expect(got).toEqual(messages.map((message) => [...message]));
        },
      ),
      { numRuns: 300 },
    );
  });

  test('that were changed on the way are refused', () => {
    const frame = framed(bytes('two vials'));
    for (let i = 4; i < frame.length; i++) {
      const slipped = frame.slice();
      slipped[i]! ^= 1;
      expect(() => frameReader()(slipped)).toThrow('damaged');
    }
  });

  test('that claim to be endless are refused at once', () => {
    expect(() => frameReader()(Uint8Array.from([255, 255, 255, 255, 0, 0, 0, 0]))).toThrow('damaged');
  });

  test('that stop half way wait for the rest', () => {
    const frame = framed(bytes('half'));
    const read = frameReader();
    expect(read(frame.slice(0, 9))).toEqual([]);
    expect(read(frame.slice(9))).toEqual([bytes('half')]);
  });
});
