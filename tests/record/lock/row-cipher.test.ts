import { createCipheriv, createDecipheriv, randomBytes } from 'node:crypto';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { KEY_BYTES, NONCE_BYTES } from '../../../src/record/lock/key-sizes.ts';
import { open, seal } from '../../../src/record/lock/row-cipher.ts';

const hex = (text: string) => new Uint8Array(Buffer.from(text, 'hex'));
const TAG_BYTES = 16;

/** OpenSSL's AES-256-GCM, by way of Node. */
function sealOutside(key: Uint8Array, nonce: Uint8Array, plain: Uint8Array, bound: Uint8Array): Uint8Array {
  const cipher = createCipheriv('aes-256-gcm', key, nonce).setAAD(bound);
  return new Uint8Array(Buffer.concat([cipher.update(plain), cipher.final(), cipher.getAuthTag()]));
}
function openOutside(key: Uint8Array, nonce: Uint8Array, sealed: Uint8Array, bound: Uint8Array): Uint8Array {
  const decipher = createDecipheriv('aes-256-gcm', key, nonce).setAAD(bound).setAuthTag(sealed.subarray(-TAG_BYTES));
  return new Uint8Array(Buffer.concat([decipher.update(sealed.subarray(0, -TAG_BYTES)), decipher.final()]));
}

const bytes = (length: number) => fc.uint8Array({ minLength: length, maxLength: length });
const asked = fc.tuple(bytes(KEY_BYTES), bytes(NONCE_BYTES), fc.uint8Array({ maxLength: 300 }), fc.uint8Array({ maxLength: 60 }));

test('test case 16 of “The Galois/Counter Mode of Operation” (McGrew and Viega; from memory, and the same from OpenSSL)', () => {
  const key = hex('feffe9928665731c6d6a8f9467308308'.repeat(2));
  const nonce = hex('cafebabefacedbaddecaf888');
  const plain = hex(
    'd9313225f88406e5a55909c5aff5269a86a7a9531534f7da2e4c303d8a318a721c3c0c95956809532fcf0e2449a6b525b16aedf5aa0de657ba637b39',
  );
  const bound = hex('feedfacedeadbeeffeedfacedeadbeefabaddad2');
  const sealed = hex(
    '522dc1f099567d07f47f37a32a84427d643a8cdcbfe5c0c97598a2bd2555d1aa8cb08e48590dbb3da7b08b1056828838c5f61e6393ba7a0abcc9f66276fc6ece0f4e1768cddf8853bb2d551b',
  );
  expect(sealOutside(key, nonce, plain, bound)).toEqual(sealed);
  expect(seal(key, nonce, plain, bound)).toEqual(sealed);
  expect(open(key, nonce, sealed, bound)).toEqual(plain);
});

describe('against OpenSSL', () => {
  test('it opens what we seal, and we what it seals', () => {
    fc.assert(
      fc.property(asked, ([key, nonce, plain, bound]) => {
        expect(openOutside(key, nonce, seal(key, nonce, plain, bound), bound)).toEqual(plain);
        expect(open(key, nonce, sealOutside(key, nonce, plain, bound), bound)).toEqual(plain);
      }),
    );
  });

  test('a megabyte too', () => {
    const [key, nonce, plain] = [randomBytes(KEY_BYTES), randomBytes(NONCE_BYTES), new Uint8Array(randomBytes(1_000_003))];
    const sealed = seal(key, nonce, plain, new Uint8Array());
    expect(Buffer.compare(sealed, sealOutside(key, nonce, plain, new Uint8Array()))).toBe(0);
  });
});

test('any bit that is not as it was, of key, nonce, sealed bytes or what is bound, and nothing opens', () => {
  const flip = fc.record({ part: fc.nat({ max: 3 }), at: fc.nat(), bit: fc.nat({ max: 7 }) });
  fc.assert(
    fc.property(asked, flip, ([key, nonce, plain, bound], { part, at, bit }) => {
      const parts = [key, nonce, seal(key, nonce, plain, bound), bound] as const;
      const changed = parts.map((each) => new Uint8Array(each));
      const target = changed[part];
      fc.pre(target !== undefined && target.length > 0);
      if (target) target[at % target.length] = (target[at % target.length] ?? 0) ^ (1 << bit);
      const [k = key, n = nonce, sealed = key, b = bound] = changed;
      expect(open(k, n, sealed, b)).toBeNull();
    }),
  );
});

test('too few bytes do not open', () => {
  const key = new Uint8Array(KEY_BYTES);
  const nonce = new Uint8Array(NONCE_BYTES);
  for (let length = 0; length < TAG_BYTES; length += 1) {
    expect(open(key, nonce, new Uint8Array(length), new Uint8Array())).toBeNull();
  }
});
