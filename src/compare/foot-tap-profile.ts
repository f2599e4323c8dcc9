import type { ExerciseId } from '../exercises/exercise.ts';
import type { SetResult } from '../measure/set-result.ts';
import { fail, ok, type Result } from '../result.ts';
import { median, quantile } from '../signal/median.ts';
import { type Ms, ms } from '../units.ts';
import { type Fatigue, fatigueOf } from './fatigue.ts';
import type { TooFewRepetitions } from './range-difference.ts';
import { peakIntervals, type Tempo, type TooFewIntervals, tempoOf } from './tempo.ts';

/** How long the foot stayed up, over the complete taps. */
export interface Hold {
  readonly medianMs: Ms;
  /** Middle half of the taps. */
  readonly fromMs: Ms;
  readonly toMs: Ms;
}

/** A set of foot taps in full. Parts that the set is too short for say so by themselves. */
export interface FootTapProfile {
  readonly tempo: Result<Tempo, TooFewIntervals>;
  /** Null without a complete tap. */
  readonly hold: Hold | null;
  readonly fatigue: Result<Fatigue, TooFewRepetitions>;
}

export interface NoFootTaps {
  readonly kind: 'not-foot-taps';
  readonly found: SetResult['exercise'];
}

/** Tempo, hold and fatigue of a set of foot taps. */
export function footTapProfile(
  set: Pick<SetResult, 'reps' | 'curve'> & { readonly exercise: ExerciseId },
): Result<FootTapProfile, NoFootTaps> {
  if (set.exercise !== 'foot-tap') return fail({ kind: 'not-foot-taps', found: set.exercise });
  const holds = set.reps.flatMap((rep) => (rep.complete ? [rep.holdMs] : []));
  return ok({ tempo: tempoOf(peakIntervals(set)), hold: holdOver(holds), fatigue: fatigueOf(set) });
}

function holdOver(holds: readonly Ms[]): Hold | null {
  const middle = median(holds);
  const from = quantile(holds, 0.25);
  const to = quantile(holds, 0.75);
  return middle === null || from === null || to === null ? null : { medianMs: ms(middle), fromMs: ms(from), toMs: ms(to) };
}
