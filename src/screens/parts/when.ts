/** A moment as people say it: day, month, time. @param iso ISO 8601 */
export const whenIn = (locale: string, iso: string): string =>
  new Intl.DateTimeFormat(locale, {
    weekday: 'short',
    day: 'numeric',
    month: 'short',
    hour: '2-digit',
    minute: '2-digit',
  }).format(new Date(iso));
