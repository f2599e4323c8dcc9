import type { Deg } from '../../units.ts';

/** Writes angles for people, in tenths as they stand in files; the unit's sign is the caller's. */
export function degreesIn(locale: string): (angle: Deg) => string {
  const tenths = new Intl.NumberFormat(locale, { minimumFractionDigits: 1, maximumFractionDigits: 1 });
  return (angle) => tenths.format(angle);
}
