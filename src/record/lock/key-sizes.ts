/** Bytes of a key for AES-256. */
export const KEY_BYTES = 32;

/** Bytes of a nonce. NIST SP 800-38D: 96 bits are what GCM is made for. */
export const NONCE_BYTES = 12;
