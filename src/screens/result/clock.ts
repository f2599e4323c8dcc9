import type { Ms } from '../../units.ts';

/** A time within the set as minutes and seconds, 0:07. */
export function clockOf(tMs: Ms): string {
  const seconds = Math.max(0, Math.floor(tMs / 1000));
  return `${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, '0')}`;
}
