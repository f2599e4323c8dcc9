import { KEY_BYTES, NONCE_BYTES } from './key-sizes.ts';
import { type LockRow, SALT_BYTES } from './lock-row.ts';
import { normalised } from './passphrase.ts';

/** The parts of WebCrypto that the lock stands on. */
export type LockCrypto = Pick<Crypto, 'subtle' | 'getRandomValues'>;

/** How the key is kept: under which derivation, and wrapped. */
export type WrappedKey = Pick<LockRow, 'kdf' | 'wrapped'>;

/** Bound to the wrapped key: it is this program's, and serves this. */
const BOUND = new TextEncoder().encode('evenside lock 1');

/** A fresh key for the rows. */
export const newKey = (crypto: LockCrypto): Uint8Array<ArrayBuffer> => crypto.getRandomValues(new Uint8Array(KEY_BYTES));

/** What the passphrase gives: a key for AES-256-GCM that never leaves WebCrypto. */
export async function derived(
  { subtle }: LockCrypto,
  passphrase: string,
  { hash, rounds, salt }: Pick<WrappedKey['kdf'], 'hash' | 'rounds' | 'salt'>,
): Promise<CryptoKey> {
  const raw = new TextEncoder().encode(normalised(passphrase));
  const base = await subtle.importKey('raw', raw, 'PBKDF2', false, ['deriveKey']);
  const asked = { name: 'PBKDF2', hash, salt: new Uint8Array(salt), iterations: rounds };
  return subtle.deriveKey(asked, base, { name: 'AES-GCM', length: 8 * KEY_BYTES }, false, ['encrypt', 'decrypt']);
}

/** Wraps the rows' key under a passphrase, with a salt of its own. */
export async function wrapped(crypto: LockCrypto, key: Uint8Array, passphrase: string, rounds: number): Promise<WrappedKey> {
  const kdf = { name: 'PBKDF2', hash: 'SHA-256', rounds, salt: crypto.getRandomValues(new Uint8Array(SALT_BYTES)) } as const;
  const under = await derived(crypto, passphrase, kdf);
  const iv = crypto.getRandomValues(new Uint8Array(NONCE_BYTES));
  const asked = { name: 'AES-GCM', iv, additionalData: BOUND };
  const bytes = new Uint8Array(await crypto.subtle.encrypt(asked, under, new Uint8Array(key)));
  return { kdf, wrapped: { iv, bytes } };
}

/** The rows' key; null when the passphrase is another one, or the row was changed, which can't be told apart. */
export async function unwrapped(
  crypto: LockCrypto,
  { kdf, wrapped }: WrappedKey,
  passphrase: string,
): Promise<Uint8Array | null> {
  const under = await derived(crypto, passphrase, kdf);
  const asked = { name: 'AES-GCM', iv: new Uint8Array(wrapped.iv), additionalData: BOUND };
  try {
    return new Uint8Array(await crypto.subtle.decrypt(asked, under, new Uint8Array(wrapped.bytes)));
  } catch (cause) {
    if (cause instanceof Error && cause.name === 'OperationError') return null;
    throw cause;
  }
}
