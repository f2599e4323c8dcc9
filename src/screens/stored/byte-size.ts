const UNITS = ['kilobyte', 'megabyte', 'gigabyte'] as const;

/** Writes a size in the largest unit of which there is one at least, kilobytes otherwise, in powers of 1000: "9.4 MB". */
export function byteSize(locale: string, bytes: number): string {
  const power = Math.min(UNITS.length, Math.max(1, Math.floor(Math.log10(Math.max(1, bytes)) / 3)));
  const format = new Intl.NumberFormat(locale, {
    style: 'unit',
    unit: UNITS[power - 1] ?? 'kilobyte',
    unitDisplay: 'short',
    maximumSignificantDigits: 2,
  });
  return format.format(bytes / 1000 ** power);
}
