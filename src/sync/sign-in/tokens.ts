/** What somebody who signed in may show to the server. */
export interface Tokens {
  readonly access: string;
  /** ms since 1970; null: the server did not say. */
  readonly endsAtMs: number | null;
  /** For new ones once these have ended; null: none. */
  readonly refresh: string | null;
  /** Whose records they are for, e.g. `123`; null: nobody was named. */
  readonly patient: string | null;
}
