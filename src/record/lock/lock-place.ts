/** The one table that is never sealed: what the key is opened with. */
export const LOCK_TABLE = 'lock';

/** The key of the only row there. */
export const LOCK_ID = 'lock';
