import { NONCE_BYTES } from '../lock/key-sizes.ts';
import { SALT_BYTES } from '../lock/lock-row.ts';
import { derived, type LockCrypto } from '../lock/wrapped-key.ts';
import { FIRST_VERSION, HEADER, type RecordHeader, SEALED, SEALED_SUM } from './record-manifest.ts';
import { sha256Of } from './sha256.ts';
import { zipWriter } from './zip-writer.ts';

const toBase64 = (bytes: Uint8Array): string => btoa(String.fromCharCode(...bytes));
const fromBase64 = (text: string) => Uint8Array.from(atob(text), (character) => character.charCodeAt(0));

/**
 * Seals a whole record under a passphrase. The header, which stays readable, is bound to it: who changes a byte of the one can't open the other.
 * @param moment ISO 8601, UTC
 * @param rounds of PBKDF2
 */
export async function sealedFile(
  crypto: LockCrypto,
  plain: Uint8Array<ArrayBuffer>,
  passphrase: string,
  moment: string,
  rounds: number,
): Promise<Uint8Array<ArrayBuffer>> {
  const salt = crypto.getRandomValues(new Uint8Array(SALT_BYTES));
  const iv = crypto.getRandomValues(new Uint8Array(NONCE_BYTES));
  const header: RecordHeader = {
    evenside: 'record',
    version: FIRST_VERSION,
    sealed: { kdf: 'PBKDF2', hash: 'SHA-256', rounds, salt: toBase64(salt), cipher: 'AES-256-GCM', iv: toBase64(iv) },
  };
  const additionalData = new TextEncoder().encode(JSON.stringify(header));
  const key = await derived(crypto, passphrase, { hash: 'SHA-256', rounds, salt });
  const sealed = new Uint8Array(await crypto.subtle.encrypt({ name: 'AES-GCM', iv, additionalData }, key, plain));
  const zip = zipWriter(moment);
  zip.add(HEADER, additionalData);
  zip.addPacked(SEALED, sealed);
  zip.add(SEALED_SUM, new TextEncoder().encode(await sha256Of(crypto, sealed)));
  return zip.end();
}

/** What was sealed; null when the passphrase is another one, or the header was changed. @param head bytes of the header as they lie in the file */
export async function openedFile(
  crypto: LockCrypto,
  { sealed: { rounds, salt, iv } }: RecordHeader,
  head: Uint8Array<ArrayBuffer>,
  sealed: Uint8Array<ArrayBuffer>,
  passphrase: string,
): Promise<Uint8Array<ArrayBuffer> | null> {
  const key = await derived(crypto, passphrase, { hash: 'SHA-256', rounds, salt: fromBase64(salt) });
  try {
    const asked = { name: 'AES-GCM', iv: fromBase64(iv), additionalData: head };
    return new Uint8Array(await crypto.subtle.decrypt(asked, key, sealed));
  } catch (cause) {
    if (cause instanceof Error && cause.name === 'OperationError') return null;
    throw cause;
  }
}
