import type { GlideResult } from '../measure/set-result.ts';
import type { Side } from '../pose/landmarks.ts';
import type { GlidePattern } from '../reps/glide-coordination.ts';
import type { CalendarDay } from '../symptoms/calendar-day.ts';
import { type Ratio, ratio } from '../units.ts';
import { type DoneSet, isOf } from './done-set.ts';
import type { DoseLog } from './dose-log.ts';
import type { PrescribedExercise } from './prescribed-exercise.ts';
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
 * The measured nerve glides of one line with one leg, in order of time.
 * @param log with the lines as they are called now
 * @param isIn whether a day is looked at
 */
export const glideSets = (
  item: PrescribedExercise,
  side: Side,
  log: Pick<DoseLog, 'done' | 'reports'>,
  isIn: (day: CalendarDay) => boolean,
): readonly GlideSet[] =>
  log.done
    .flatMap((set: DoneSet): readonly GlideSet[] => {
      const { id, day, endedAt, glide } = set;
      if (!glide || set.side !== side || !isIn(day) || !isOf(item, set)) return [];
      return [{ id, day, endedAt, glide, around: symptomsAround(log, set) }];
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
