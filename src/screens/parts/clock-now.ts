import type { Clock } from '../../dose/local-time.ts';

/** The person's zone, as the browser knows it. */
export const timeZoneHere = (): string => Intl.DateTimeFormat().resolvedOptions().timeZone;

/** This moment, on the person's own clock. */
export const clockNow = (): Clock => ({ nowMs: Date.now(), timeZone: timeZoneHere() });
