import type { GlideResult } from '../measure/set-result.ts';
import type { GlidePattern } from '../reps/glide-coordination.ts';
import type { CalendarDay } from '../symptoms/calendar-day.ts';
import { type Ratio, ratio } from '../units.ts';
import type { DoneSet } from './done-set.ts';
import type { DoseLog } from './dose-log.ts';
import { type SymptomsAround, symptomsAround } from './symptoms-around.ts';

/** One measured set of nerve glides, with what was told around it. */
export interface GlideSet {
  readonly id: string;
  readonly day: CalendarDay;
  /** ISO 8601, UTC. */
  readonly endedAt: string;
  readonly glide: GlideResult;
  readonly around: SymptomsAround;
}

/**
 * Those of some sets that are measured nerve glides, in order of time.
 * @param log all that was told, with the lines called as these sets have them
 */
export const glideSets = (sets: readonly DoneSet[], log: Pick<DoseLog, 'done' | 'reports'>): readonly GlideSet[] =>
  sets
    .flatMap((set): readonly GlideSet[] => {
      const { id, day, endedAt, glide } = set;
      return glide ? [{ id, day, endedAt, glide, around: symptomsAround(log, set) }] : [];
    })
    .toSorted((a, b) => (a.endedAt < b.endedAt ? -1 : 1));

/** How many cycles were what. */
export interface GlideCount {
  readonly cycles: number;
  readonly slide: number;
  readonly tension: number;
  readonly unclear: number;
  /** Share of all cycles that slide; null without a cycle. */
  readonly slideShare: Ratio | null;
}

/** The cycles of several sets together. */
export function glideCount(glides: readonly Pick<GlideResult, 'cycles'>[]): GlideCount {
  const all = glides.flatMap(({ cycles }) => cycles);
  const of = (pattern: GlidePattern) => all.filter((cycle) => cycle.pattern === pattern).length;
  const slide = of('slide');
  return {
    cycles: all.length,
    slide,
    tension: of('tension'),
    unclear: of('unclear'),
    slideShare: all.length === 0 ? null : ratio(slide / all.length),
  };
}
