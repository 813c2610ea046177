import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { addressBytes, addressText } from '../../../src/core/pairing/address';
import { fromBase45, toBase45 } from '../../../src/core/pairing/base45';
import { checksum } from '../../../src/core/pairing/checksum';
import { codeTextFor, describedBy, readCode, sdpOf, tagOfOffer } from '../../../src/core/pairing/description';

/** As browsers write it, the certificate and passwords of no one. */
const offer = [
  'v=0',
  'o=- 8172236214018 2 IN IP4 127.0.0.1',
  's=-',
  't=0 0',
  'a=group:BUNDLE 0',
  'a=extmap-allow-mixed',
  'a=msid-semantic: WMS',
  'm=application 53190 UDP/DTLS/SCTP webrtc-datachannel',
  'c=IN IP4 0.0.0.0',
  'a=candidate:1 1 udp 2113937151 0d3a44b5-6a10-4d60-a4c5-1f0d1c2b3a49.local 53190 typ host generation 0 network-cost 999',
  'a=candidate:2 1 udp 2113939711 c0ffee00-1234-4abc-8def-0123456789ab.local 40001 typ host generation 0 network-cost 999',
  'a=candidate:3 1 tcp 1518280447 192.168.1.7 9 typ host tcptype active generation 0',
  'a=ice-ufrag:aB+/',
  'a=ice-pwd:abcdefghijklmnopqrstuvwx',
  'a=ice-options:trickle',
  `a=fingerprint:sha-256 ${Array.from({ length: 32 }, (_, i) => (i * 7).toString(16).padStart(2, '0').toUpperCase()).join(':')}`,
  'a=setup:actpass',
  'a=mid:0',
  'a=sctp-port:5000',
  'a=max-message-size:262144',
  '',
].join('\r\n');

describe('what a browser tells of itself', () => {
  test('is in the code, and nothing that is the same in all of them', () => {
    const described = describedBy(offer, 'offer');
    expect(described.places).toEqual([
      { address: '0d3a44b5-6a10-4d60-a4c5-1f0d1c2b3a49.local', port: 53190 },
      { address: 'c0ffee00-1234-4abc-8def-0123456789ab.local', port: 40001 },
    ]);
    const code = codeTextFor(described);
    expect(code).toMatch(/^[0-9A-Z $%*+\-./:]+$/); // the close set of a QR code
    expect(code).toHaveLength(151); // 99 bytes: version 6 of the code at correction M holds 154
    expect(readCode(code)).toEqual(described);
  });

  test('comes back as a description that says the same', () => {
    const described = describedBy(offer, 'offer');
    const again = describedBy(sdpOf(readCode(codeTextFor(described))), 'offer');
    expect(again).toEqual(described);
    expect(sdpOf(described)).toContain('a=setup:actpass\r\n');
    expect(sdpOf({ ...described, type: 'answer' })).toContain('a=setup:active\r\n');
  });

  test('names the offer that it answers', () => {
    const code = codeTextFor(describedBy(offer, 'offer'));
    const answer = describedBy(offer, 'answer', tagOfOffer(code));
    expect(readCode(codeTextFor(answer)).answers).toBe(tagOfOffer(code));
    expect(tagOfOffer(code)).toBeLessThan(65536);
  });

  test('is refused without an address that another device can reach', () => {
    const none = offer.replace(/^a=candidate.*\r\n/gm, '');
    expect(() => describedBy(none, 'offer')).toThrow('no address in the local network');
    const own = `${none}a=candidate:1 1 udp 1 127.0.0.1 5 typ host\r\na=candidate:2 1 udp 1 fe80::1 5 typ host\r\n`;
    expect(() => describedBy(own, 'offer')).toThrow('no address in the local network');
  });

  test('keeps four places at most, IPv6 last', () => {
    const many = ['2001:db8::1', '10.0.0.1', '10.0.0.2', '10.0.0.3', '10.0.0.4'];
    const lines = many.map((address, i) => `a=candidate:${i} 1 udp 9 ${address} 1000 typ host\r\n`).join('');
    const places = describedBy(offer.replace(/^a=candidate.*\r\n/gm, '') + lines, 'offer').places;
    expect(places.map(({ address }) => address)).toEqual(['10.0.0.1', '10.0.0.2', '10.0.0.3', '10.0.0.4']);
  });
});

describe('a code', () => {
  const letters = fc.string({ unit: fc.constantFrom(...'ABCxyz019+/'), minLength: 4, maxLength: 40 });
  const address = fc.oneof(
    fc.ipV4(),
    fc.uuid().map((id) => `${id}.local`),
    fc
      .array(fc.integer({ min: 0x1000, max: 0xffff }), { minLength: 8, maxLength: 8 })
      .map((groups) => groups.map((g) => g.toString(16)).join(':')),
  );
  const described = fc.record({
    type: fc.constantFrom('offer' as const, 'answer' as const),
    name: letters,
    password: letters,
    fingerprint: fc.uint8Array({ minLength: 32, maxLength: 32 }),
    places: fc.array(fc.record({ address, port: fc.integer({ min: 1, max: 65535 }) }), { minLength: 1, maxLength: 4 }),
    answers: fc.integer({ min: 0, max: 65535 }),
  });

  test('of anything that can be told is read back', () => {
    fc.assert(
      fc.property(described, (one) => void expect(readCode(codeTextFor(one))).toEqual(one)),
      { numRuns: 200 },
    );
  });

  test('of another kind, or with any sign changed, is refused in one sentence', () => {
    const code = codeTextFor(describedBy(offer, 'offer'));
    for (const foreign of [
      '',
      '7',
      'HTTPS://EXAMPLE.ORG',
      'hello',
      code.slice(0, -3),
      `${code}000`,
      code.replace('.', '000.'),
    ])
      expect(() => readCode(foreign)).toThrow('not the code of another device');
    for (let i = 0; i < code.length; i++) {
      const slipped = code.slice(0, i) + (code[i] === 'A' ? 'B' : 'A') + code.slice(i + 1);
      expect(() => readCode(slipped)).toThrow(/not the code of another device/);
    }
  });

  test('of another version says so', () => {
    const next = codeTextFor({ ...describedBy(offer, 'offer'), type: 'offer' });
    expect(() => readCode(withVersion(next, 2))).toThrow('another version of Minim');
  });
});

test.each([
  ['192.168.1.20', '192.168.1.20'],
  ['2001:db8::1', '2001:0db8:0000:0000:0000:0000:0000:0001'],
  ['::', '0000:0000:0000:0000:0000:0000:0000:0000'],
])('the address %s takes few bytes', (address, back) => {
  expect(addressText(Uint8Array.from(addressBytes(address)!)).text).toBe(back);
});

test.each(['', 'example.org', '1.2.3', '1:2:3', '1::2::3', 'host.local'])('%j is no address', (text) => {
  expect(addressBytes(text)).toBeNull();
});

function withVersion(code: string, version: number): string {
  const bytes = fromBase45(code.slice(1, -1));
  const body = Uint8Array.from([version * 16 + (bytes[0]! & 15), ...bytes.subarray(1, -2)]);
  const sum = checksum(body);
  return `M${toBase45(Uint8Array.from([...body, (sum >> 8) & 255, sum & 255]))}.`;
}
