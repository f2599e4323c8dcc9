import type { ExerciseId } from '../../src/exercises/exercise.ts';
import type { Recording, RecordingMeta } from '../../src/record/recording.ts';
import type { ClipWithTruth } from './clip-with-truth.ts';
import { type MatchedRep, matchedReps } from './matched-reps.ts';
import { measureThreeWays, SOURCES, type Source } from './three-sources.ts';
import { truePartials } from './true-partials.ts';

/** How one clip came out, from one source. */
export interface ClipOutcome {
  readonly clip: ClipWithTruth;
  readonly exercise: ExerciseId;
  readonly model: RecordingMeta['model'];
  readonly source: Source;
  readonly trueCount: number;
  readonly count: number;
  readonly truePartialCount: number;
  readonly partialCount: number;
  readonly matched: readonly MatchedRep[];
}

/** Measures a clip's recording from each source and sets it against the truth. */
export function outcomesOf(clip: ClipWithTruth, recording: Recording): readonly ClipOutcome[] {
  const results = measureThreeWays(recording);
  return SOURCES.map((source) => ({
    clip,
    exercise: clip.exercise,
    model: recording.model,
    source,
    trueCount: clip.truth.reps.length,
    count: results[source].count,
    truePartialCount: truePartials(clip),
    partialCount: results[source].partialCount,
    matched: matchedReps(results[source], clip),
  }));
}
