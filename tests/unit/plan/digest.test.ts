// The digest against Node's own implementation and the examples of FIPS 180-4.
import { createHash } from 'node:crypto';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { digest } from '../../../server/plan/digest.ts';

// NIST, "Cryptographic Standards and Guidelines: Examples with Intermediate Values", SHA-256.
test.each([
  ['abc', 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad'],
  [
    'abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq',
    '248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1',
  ],
])('the example %s', (text, hash) => expect(digest(text)).toBe(hash));

test('any text gives what Node gives', () => {
  const node = (text: string) => createHash('sha256').update(text, 'utf8').digest('hex');
  fc.assert(fc.property(fc.string({ maxLength: 300 }), (text) => digest(text) === node(text)));
  for (let length = 50; length < 70; length++)
    expect(digest('é'.repeat(length)), `${length} letters`).toBe(node('é'.repeat(length)));
});
