import type { Entry } from './entry.ts';

/** "A clinician has seen me": said explicitly and kept. Opens what a stop had closed, for what was told before it. */
export interface Clearance extends Entry {
  readonly kind: 'clearance';
  /** Who it was and what they said, in the person's own words; may be empty. */
  readonly note: string;
}
