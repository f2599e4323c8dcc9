/** Not for secrets that somebody guesses at: it takes as long as they agree. */
export const sameBytes = (a: Uint8Array, b: Uint8Array): boolean => a.length === b.length && a.every((byte, i) => byte === b[i]);
