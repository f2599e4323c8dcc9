/** How many weeks may be looked back on: to about the last visit, or as far as the diary is read. Chosen. */
export const WEEKS = ['2', '8'] as const;
export type Weeks = (typeof WEEKS)[number];
