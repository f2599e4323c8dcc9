/**
 * Characters of a passphrase at the least. NIST SP 800-63B, 5.1.1.2 (from memory): at least 8, no rules on which kinds of character, and spaces and every
 * script allowed.
 */
export const LEAST_CHARACTERS = 8;

/** The same text typed on another keyboard may come in other code points: NFKC makes them one. NIST SP 800-63B, 5.1.1.2 (from memory). */
export const normalised = (passphrase: string): string => passphrase.normalize('NFKC');

/** Whether a passphrase has fewer characters than it must, as people count them. */
export const isShort = (passphrase: string): boolean => [...normalised(passphrase)].length < LEAST_CHARACTERS;
