import { mean, sampleStandardDeviation } from 'simple-statistics';
import { minimalDetectableChange } from '../../src/compare/minimal-detectable-change.ts';
import { EXERCISE_IDS, type ExerciseId } from '../../src/exercises/exercise.ts';
import { median } from '../../src/signal/median.ts';
import type { ClipOutcome } from './clip-outcome.ts';
import { EXERCISE_NAME } from './exercise-name.ts';
import { plain, signed } from './numbers.ts';
import { table } from './table.ts';

/** How the range of a set scatters when the very same movement is filmed again: other noise, other light, the camera put up anew. Degrees. */
export interface Repeatability {
  readonly exercise: ExerciseId;
  readonly filmed: number;
  /** Standard error of measurement: standard deviation of the sets' median ranges, each against its own truth. */
  readonly semDeg: number;
  readonly mdcDeg: number;
  readonly biasDeg: number;
}

/** Of the sets as reported (fused) whose clips show one movement several times over; nothing for exercises with fewer than two. */
export function repeatabilityOf(outcomes: readonly ClipOutcome[]): readonly Repeatability[] {
  return EXERCISE_IDS.flatMap((exercise) => {
    const errors = outcomes
      .filter((o) => o.exercise === exercise && o.source === 'fused' && o.clip.truth.repeats !== undefined)
      .flatMap((o) => median(o.matched.map((m) => m.rangeErrorDeg)) ?? []);
    if (errors.length < 2) return [];
    const semDeg = sampleStandardDeviation(errors);
    return [{ exercise, filmed: errors.length, semDeg, mdcDeg: minimalDetectableChange(semDeg), biasDeg: mean(errors) }];
  });
}

/** The part of the report on it; empty when no movement was filmed more than once. */
export function repeatabilityPart(outcomes: readonly ClipOutcome[]): string {
  const found = repeatabilityOf(outcomes);
  if (found.length === 0) return '';
  const rows = found.map((r) => [
    EXERCISE_NAME[r.exercise],
    String(r.filmed),
    plain(r.semDeg, 2),
    plain(r.mdcDeg, 2),
    signed(r.biasDeg),
  ]);
  return `## Repeatability

One movement of one body, filmed several times: other noise, other light, and the camera put up anew each time (within 4 degrees of turn, 6 cm in height, 12 cm in
distance, 5 cm to the side). The standard error of measurement (SEM) is how far the sets' median ranges scatter, the minimal detectable change (MDC95) 1.96 x
sqrt(2) times that. These clips are in no other table. A person does not move alike twice, so people's values are larger.

${table(['exercise', 'times filmed', 'SEM', 'MDC95', 'bias'], rows)}
`;
}
