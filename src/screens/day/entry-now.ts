import { localTime } from '../../dose/local-time.ts';
import { newId } from '../../record/new-id.ts';
import type { Entry } from '../../symptoms/entry.ts';
import { clockNow } from '../parts/clock-now.ts';

/** What every entry that the person makes now begins with. */
export function entryNow(origin: Entry['origin'] = 'own'): Entry {
  const clock = clockNow();
  return { id: newId(), schema: 1, origin, at: new Date(clock.nowMs).toISOString(), day: localTime(clock).day };
}
