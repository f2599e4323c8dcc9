import { gcm } from '@noble/ciphers/aes.js';

/** Bytes of a key, a nonce and the tag at the end. NIST SP 800-38D: 96 bits are the nonce that GCM is made for. */
export const KEY_BYTES = 32;
export const NONCE_BYTES = 12;

/**
 * AES-256-GCM, in one go: a transaction of the database closes while the browser's own ciphers, which answer later, are waited for. The one file that
 * knows `@noble/ciphers`.
 * @param nonce never used twice with one key
 * @param bound what is not hidden, but must be the same when it is opened
 * @returns the hidden bytes and their tag of 16 bytes
 */
export const seal = (key: Uint8Array, nonce: Uint8Array, plain: Uint8Array, bound: Uint8Array): Uint8Array =>
  gcm(key, nonce, bound).encrypt(plain);

/** What `seal` hid; null when key, nonce, bytes or `bound` are not those of then. */
export function open(key: Uint8Array, nonce: Uint8Array, sealed: Uint8Array, bound: Uint8Array): Uint8Array | null {
  try {
    return gcm(key, nonce, bound).decrypt(sealed);
  } catch {
    // The library throws for a wrong tag and for too few bytes alike; lengths of key and nonce are constants here.
    return null;
  }
}
