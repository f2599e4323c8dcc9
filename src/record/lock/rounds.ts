/** Rounds of PBKDF2-HMAC-SHA-256 for a new passphrase. OWASP Password Storage Cheat Sheet, 2023 (from memory): at least 600,000. */
export const ROUNDS = 600_000;

/**
 * Rounds that a lock or a file may ask for. Below, guessing is cheap; above, a damaged one would hold the page up for minutes. Too few can't be slipped in: a
 * key is made under as many as are said where it is kept.
 */
export const ROUNDS_ASKED = { least: 1000, most: 20_000_000 } as const;
