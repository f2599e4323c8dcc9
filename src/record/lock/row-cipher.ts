import { gcm } from '@noble/ciphers/aes.js';
import type { RowCipher } from './sealed-row.ts';

/**
 * AES-256-GCM, in one go: a transaction of the database closes while the browser's own ciphers, which answer later, are waited for. The one file that
 * knows `@noble/ciphers`.
 * @param nonce never used twice with one key
 * @param bound what is not hidden, but must be the same when it is opened
 * @returns the hidden bytes and their tag of 16 bytes
 */
export const seal: RowCipher['seal'] = (key, nonce, plain, bound) => gcm(key, nonce, bound).encrypt(plain);

/** What `seal` hid; null when key, nonce, bytes or `bound` are not those of then. */
export const open: RowCipher['open'] = (key, nonce, sealed, bound) => {
  try {
    return gcm(key, nonce, bound).decrypt(sealed);
  } catch {
    // The library throws for a wrong tag and for too few bytes alike; lengths of key and nonce are constants here.
    return null;
  }
};
