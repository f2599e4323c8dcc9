import type { Ms } from '../../units.ts';

/** A duration in seconds with one decimal, as the language writes it. */
export const secondsIn = (locale: string): ((t: Ms) => string) => {
  const format = new Intl.NumberFormat(locale, { minimumFractionDigits: 1, maximumFractionDigits: 1 });
  return (t) => format.format(t / 1000);
};
