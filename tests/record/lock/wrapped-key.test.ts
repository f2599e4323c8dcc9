import { createCipheriv, createDecipheriv, pbkdf2Sync } from 'node:crypto';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { newKey, unwrapped, wrapped } from '../../../src/record/lock/wrapped-key.ts';
import { FEW_ROUNDS, PASSPHRASE } from './opened-with-lock.ts';

const { crypto } = globalThis;
const BOUND = Buffer.from('evenside lock 1');

/** RFC 7914, section 11 (from memory, and the same from OpenSSL): PBKDF2-HMAC-SHA-256 of "passwd" and "salt", one round; the first 32 of 64 bytes. */
const RFC_7914 = '55ac046e56e3089fec1691c22544b605f94185216dde0465e68b9d57c20dacbc';

describe('what a passphrase gives', () => {
  test('is PBKDF2-HMAC-SHA-256', async () => {
    expect(pbkdf2Sync('passwd', 'salt', 1, 32, 'sha256').toString('hex')).toBe(RFC_7914);
    const [key, iv] = [newKey(crypto), crypto.getRandomValues(new Uint8Array(12))];
    const cipher = createCipheriv('aes-256-gcm', Buffer.from(RFC_7914, 'hex'), iv).setAAD(BOUND);
    const bytes = new Uint8Array(Buffer.concat([cipher.update(key), cipher.final(), cipher.getAuthTag()]));
    const kdf = { name: 'PBKDF2', hash: 'SHA-256', rounds: 1, salt: new Uint8Array(Buffer.from('salt')) } as const;
    expect(await unwrapped(crypto, { kdf, wrapped: { iv, bytes } }, 'passwd')).toEqual(key);
  });

  test('opens outside what we wrap: OpenSSL’s PBKDF2 and AES-GCM', async () => {
    const key = newKey(crypto);
    const { kdf, wrapped: sealed } = await wrapped(crypto, key, PASSPHRASE, FEW_ROUNDS);
    const under = pbkdf2Sync(PASSPHRASE, kdf.salt, FEW_ROUNDS, 32, 'sha256');
    const decipher = createDecipheriv('aes-256-gcm', under, sealed.iv).setAAD(BOUND).setAuthTag(sealed.bytes.subarray(-16));
    expect(new Uint8Array(Buffer.concat([decipher.update(sealed.bytes.subarray(0, -16)), decipher.final()]))).toEqual(key);
  });

  test('is the same for one text in two code points, and another for another', async () => {
    const key = newKey(crypto);
    const made = await wrapped(crypto, key, 'una contraseñ\u0061 larga', FEW_ROUNDS);
    expect(await unwrapped(crypto, made, 'una contrasen\u0303a larga')).toEqual(key);
    expect(await unwrapped(crypto, made, 'una contrasena larga')).toBeNull();
    expect(await unwrapped(crypto, made, 'Una contraseña larga')).toBeNull();
  });
});

test('whatever passphrase wraps it unwraps it, and no other does', async () => {
  await fc.assert(
    fc.asyncProperty(fc.string({ unit: 'binary', minLength: 1 }), fc.string({ unit: 'binary' }), async (right, wrong) => {
      const key = newKey(crypto);
      const made = await wrapped(crypto, key, right, FEW_ROUNDS);
      expect(await unwrapped(crypto, made, right)).toEqual(key);
      const same = right.normalize('NFKC') === wrong.normalize('NFKC');
      expect(await unwrapped(crypto, made, wrong)).toEqual(same ? key : null);
    }),
    { numRuns: 40 },
  );
});

test('two wrappings of one key under one passphrase have nothing in common', async () => {
  const key = newKey(crypto);
  const [one, other] = [await wrapped(crypto, key, PASSPHRASE, FEW_ROUNDS), await wrapped(crypto, key, PASSPHRASE, FEW_ROUNDS)];
  expect(one.kdf.salt).not.toEqual(other.kdf.salt);
  expect(one.wrapped.iv).not.toEqual(other.wrapped.iv);
  expect(one.wrapped.bytes).not.toEqual(other.wrapped.bytes);
});
