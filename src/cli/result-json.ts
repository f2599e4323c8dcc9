import type { ExerciseDefinition } from '../exercises/exercise-definition.ts';
import type { SetResult } from '../measure/set-result.ts';
import { footTapJson } from './foot-tap-lines.ts';
import { coordinationJson } from './glide-lines.ts';

/** Version of the result file, see docs/result-format.md. */
const RESULT_SCHEMA = 1;

const rounded = (x: number, places: number): number => Math.round(x * 10 ** places) / 10 ** places + 0;

/** A set's result as the JSON of the command line: angles to a hundredth of a degree, times to a millisecond. */
export function resultJson(
  result: SetResult,
  file: string,
  durationMs: number,
  definition: ExerciseDefinition | null = null,
): string {
  const { reps, summary, quality, size } = result;
  const d = (x: number) => rounded(x, 2);
  const value = {
    schemaVersion: RESULT_SCHEMA,
    exercise: result.exercise,
    definition,
    side: result.side,
    source: {
      file,
      width: size.width,
      height: size.height,
      durationMs: rounded(durationMs, 0),
      frames: result.frames,
      framesUsed: result.framesUsed,
    },
    count: result.count,
    partialCount: result.partialCount,
    reps: reps.map((rep) => ({
      number: rep.number,
      startMs: rounded(rep.startMs, 0),
      peakMs: rounded(rep.peakMs, 0),
      endMs: rounded(rep.endMs, 0),
      startDeg: d(rep.startDeg),
      peakDeg: d(rep.peakDeg),
      rangeDeg: d(rep.rangeDeg),
      holdMs: rounded(rep.holdMs, 0),
      complete: rep.complete,
      flags: rep.flags,
      uncertaintyDeg: d(rep.uncertaintyDeg),
      source: rep.source,
      footDeg: rep.footDeg === null ? null : d(rep.footDeg),
      footUncertaintyDeg: rep.footUncertaintyDeg === null ? null : d(rep.footUncertaintyDeg),
      upMs: rep.upMs === null ? null : rounded(rep.upMs, 0),
      sankAfterMs: rep.sankAfterMs === null ? null : rounded(rep.sankAfterMs, 0),
    })),
    summary: summary && {
      medianPeakDeg: d(summary.medianPeakDeg),
      medianRangeDeg: d(summary.medianRangeDeg),
      uncertaintyDeg: d(summary.uncertaintyDeg),
    },
    footTaps: footTapJson(result),
    coordination: coordinationJson(result),
    kneeLimitDeg: result.kneeLimitDeg === null ? null : d(result.kneeLimitDeg),
    onset: result.onset && {
      tMs: rounded(result.onset.tMs, 0),
      angleDeg: result.onset.angleDeg === null ? null : d(result.onset.angleDeg),
    },
    quality: {
      cameraTurnDeg: quality.cameraTurnDeg === null ? null : d(quality.cameraTurnDeg),
      warnings: quality.warnings,
    },
  };
  return `${JSON.stringify(value, null, 2)}\n`;
}
