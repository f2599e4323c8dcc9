import type { LockCrypto } from '../lock/wrapped-key.ts';

/** SHA-256 in hexadecimal digits. */
export async function sha256Of({ subtle }: LockCrypto, bytes: Uint8Array<ArrayBuffer>): Promise<string> {
  const digest = new Uint8Array(await subtle.digest('SHA-256', bytes));
  return Array.from(digest, (byte) => byte.toString(16).padStart(2, '0')).join('');
}
