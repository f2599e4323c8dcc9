import { createHash } from 'node:crypto';

/**
 * What tells one file from every other.
 * @typedef {{ readonly bytes: number, readonly sha256: string }} Fingerprint
 */

/**
 * @param {Uint8Array} data
 * @returns {Fingerprint}
 */
export const fingerprintOf = (data) => ({ bytes: data.length, sha256: createHash('sha256').update(data).digest('hex') });

/**
 * @param {Fingerprint} got
 * @param {Fingerprint} expected
 * @returns {string | undefined} how they differ, nothing when they are the same
 */
export const difference = (got, expected) => {
  if (got.bytes !== expected.bytes) return `${got.bytes} bytes instead of ${expected.bytes}`;
  if (got.sha256 !== expected.sha256) return `SHA-256 ${got.sha256} instead of ${expected.sha256}`;
  return undefined;
};
