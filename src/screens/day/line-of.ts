import type { Today } from '../../dose/today.ts';
import { isShown, type TodayLine } from '../../dose/today-line.ts';

/** The line of today that an address names; null when today has no such line, or no more sets of it. */
export const lineOf = (today: Today, itemId: string, side: string): TodayLine | null =>
  today.lines.find((line) => line.item.id === itemId && line.side === side && isShown(line)) ?? null;
