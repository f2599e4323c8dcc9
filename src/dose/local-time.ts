import type { CalendarDay } from '../symptoms/calendar-day.ts';

/** What the clock on the wall says. */
export interface LocalTime {
  readonly day: CalendarDay;
  /** Minutes since the clock said midnight, 0 to 1439. In the night when clocks go back one number comes twice. */
  readonly minute: number;
}

/** A moment and where it is looked at from. */
export interface Clock {
  /** ms since 1970, UTC. */
  readonly nowMs: number;
  /** IANA name, such as Europe/Madrid. */
  readonly timeZone: string;
}

/**
 * The wall clock of a moment. The rules of the zone are the browser's, summer time included; nothing is taken from where the code runs.
 * Throws a RangeError when the zone does not exist.
 */
export function localTime({ nowMs, timeZone }: Clock): LocalTime {
  const format = new Intl.DateTimeFormat('en-u-ca-gregory-nu-latn', {
    timeZone,
    hourCycle: 'h23',
    year: 'numeric',
    month: '2-digit',
    day: '2-digit',
    hour: '2-digit',
    minute: '2-digit',
  });
  const parts = new Map(format.formatToParts(nowMs).map(({ type, value }) => [type, value]));
  const part = (type: Intl.DateTimeFormatPartTypes): string => {
    const value = parts.get(type);
    if (value === undefined) throw new Error(`localTime requires a format with ${type}`);
    return value;
  };
  return {
    day: `${part('year').padStart(4, '0')}-${part('month')}-${part('day')}` as CalendarDay,
    minute: Number(part('hour')) * 60 + Number(part('minute')),
  };
}
