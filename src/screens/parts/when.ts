/**
 * A moment as people say it: day, month, time, and the year when it is not this one.
 * @param iso ISO 8601
 */
export function whenIn(locale: string, iso: string, now = new Date()): string {
  const then = new Date(iso);
  const thisYear = then.getFullYear() === now.getFullYear();
  return new Intl.DateTimeFormat(locale, {
    weekday: 'short',
    day: 'numeric',
    month: 'short',
    ...(thisYear ? {} : { year: 'numeric' }),
    hour: 'numeric',
    minute: '2-digit',
  }).format(then);
}
