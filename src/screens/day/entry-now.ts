import { localTime } from '../../dose/local-time.ts';
import { newId } from '../../record/new-id.ts';
import type { Entry } from '../../symptoms/entry.ts';

/** What every entry that the person makes now begins with. */
export function entryNow(origin: Entry['origin'] = 'own'): Entry {
  const now = new Date();
  const { timeZone } = Intl.DateTimeFormat().resolvedOptions();
  return { id: newId(), schema: 1, origin, at: now.toISOString(), day: localTime({ nowMs: now.getTime(), timeZone }).day };
}
